import type { Circle } from '../../geometry/circle-through.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { type EdgeResponse, edgeResponse } from '../fit/edge-response.ts'
import { StrokeModel } from '../fit/stroke-model.ts'

const { f64 } = elements

/** A straight stroke through a hole: how far to the right of the origin it passes, pixels, and its direction, radians. */
export interface HoleLine {
  across: number
  direction: number
  width: number
}

/** A small round stroke and two straight ones through it; places are told from an origin near its middle, pixels. */
export interface HoleShape {
  lines: readonly [HoleLine, HoleLine]
  round: Circle & { width: number }
  blur: number
}

/** Parameters of a shape: three of each line, four of the circle, blur; and those that values hang on linearly. */
export const SHAPE = 11
/** Ground, its slopes, contrast of the lines, contrast of the circle. */
export const LINEAR = 5
/** Which parameter is what. */
export const [ACROSS, DIRECTION, WIDTH, ROUND, BLUR] = [[0, 3], [1, 4], [2, 5], 6, 10] as const

/** The share of a pixel that something else hardly covers; and that a line covers where it is looked at by itself. */
const HARDLY = 0.1
const ON = 0.5

/** Directions in which an edge's response is worked out, over an eighth of a turn: round the circle it changes slowly. */
const SECTORS = 4

export function parametersOf({ lines, round, blur }: HoleShape): Float64Array {
  const [a, b] = lines
  return Float64Array.of(
    a.across,
    a.direction,
    Math.log(a.width),
    b.across,
    b.direction,
    Math.log(b.width),
    round.centre[0],
    round.centre[1],
    round.radius,
    Math.log(round.width),
    Math.log(blur),
  )
}

/**
 * What ink of contrast 1 makes of the pixels of a hole, and how that changes with its shape. Where strokes lie on one
 * another there is ink once: the ground that shows is what each of them leaves of it.
 */
export class HoleModel {
  readonly #parameters: Float64Array
  readonly #edges: readonly [EdgeResponse, EdgeResponse]
  readonly #roundEdges: readonly EdgeResponse[]
  readonly #strokes = [new StrokeModel(), new StrokeModel(), new StrokeModel()] as const
  /** Share of the pixel that the lines cover where the circle does not, and that the circle covers. */
  lines = Number.NaN
  round = Number.NaN
  /** Their derivatives to the parameters of the shape. */
  readonly ofLines = new Float64Array(SHAPE)
  readonly ofRound = new Float64Array(SHAPE)

  constructor(parameters: Float64Array) {
    const blur = Math.exp(f64(parameters, BLUR))
    const edge = (direction: number) => edgeResponse([-Math.sin(direction), Math.cos(direction)], blur)
    this.#parameters = parameters
    this.#edges = [edge(f64(parameters, DIRECTION[0])), edge(f64(parameters, DIRECTION[1]))]
    this.#roundEdges = Array.from({ length: SECTORS }, (_, i) => edge(((i + 0.5) * Math.PI) / 4 / SECTORS))
  }

  /** @param x and y from the origin, pixels */
  read(x: number, y: number): void {
    const p = this.#parameters
    const [a, b, c] = this.#strokes
    const blur = Math.exp(f64(p, BLUR))
    const readLine = (i: 0 | 1, stroke: StrokeModel): number => {
      const [dx, dy] = [Math.cos(f64(p, DIRECTION[i])), Math.sin(f64(p, DIRECTION[i]))]
      const u = y * dx - x * dy - f64(p, ACROSS[i])
      stroke.read(this.#edges[i], u, { offset: 0, turn: 0, width: Math.exp(f64(p, WIDTH[i])), blur })
      return x * dx + y * dy
    }
    const alongA = readLine(0, a)
    const alongB = readLine(1, b)
    const [rx, ry] = [x - f64(p, ROUND), y - f64(p, ROUND + 1)]
    const away = Math.max(Math.hypot(rx, ry), 1e-9)
    const folded = Math.atan2(Math.min(Math.abs(rx), Math.abs(ry)), Math.max(Math.abs(rx), Math.abs(ry)))
    const sector = Math.min(SECTORS - 1, Math.floor((folded / (Math.PI / 4)) * SECTORS))
    const roundEdge = this.#roundEdges[sector]
    if (roundEdge !== undefined)
      c.read(roundEdge, away - f64(p, ROUND + 2), {
        offset: 0,
        turn: 0,
        width: Math.exp(f64(p, ROUND + 3)),
        blur,
      })
    const [clearA, clearB, clear] = [1 - a.stroke, 1 - b.stroke, 1 - c.stroke]
    const covered = 1 - clearA * clearB
    this.lines = covered * clear
    this.round = c.stroke
    const [la, lb] = [clearB * clear, clearA * clear]
    const out = this.ofLines
    // A line at a direction more lies across by as much less as the place lies along.
    out[0] = la * a.place
    out[1] = la * a.place * alongA
    out[2] = la * a.width
    out[3] = lb * b.place
    out[4] = lb * b.place * alongB
    out[5] = lb * b.width
    const ofRound = this.ofRound
    ofRound[6] = (c.place * rx) / away
    ofRound[7] = (c.place * ry) / away
    ofRound[8] = c.place
    ofRound[9] = c.width
    ofRound[10] = c.blur
    for (let i = 6; i < 10; i++) out[i] = -covered * f64(ofRound, i)
    out[10] = la * a.blur + lb * b.blur - covered * c.blur
  }

  /** Of the place last read: whether neither the other line nor the circle reaches it. */
  isClearOf(line: 0 | 1): boolean {
    const other = line === 0 ? this.#strokes[1] : this.#strokes[0]
    return other.stroke < HARDLY && this.#strokes[2].stroke < HARDLY
  }

  /** Of the place last read: whether the line covers more of it than not. */
  isOn(line: 0 | 1): boolean {
    return this.#strokes[line].stroke > ON
  }
}
