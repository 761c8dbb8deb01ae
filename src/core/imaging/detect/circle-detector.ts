import { type Circle, circleThrough, type ThreePoints } from '../../geometry/circle-through.ts'
import { invertSpd } from '../../geometry/invert-spd.ts'
import { type AcceptedStroke, acceptStroke, BY_HAND } from '../accept/acceptance.ts'
import { barAt, mapReach, type PieceMap, pieceMap } from '../filter/piece-map.ts'
import { type Across, climbPath, type Path, tryPath } from '../filter/ridge-score.ts'
import type { NoStroke, RoundOptions } from '../result/stroke-types.ts'
import { type ReferenceCurve, roundCurve } from '../strip/reference-curve.ts'
import { piecesFor, type Strip, stripAlong } from '../strip/strip.ts'
import { traceStroke } from '../trace/trace-stroke.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { MOST_ENLARGED, REACH } from '../window/search-window.ts'
import { windowNoise } from '../window/window-noise.ts'
import { nearestFirst, WIDEST } from './line-detector.ts'

const SMALLEST_RADIUS = 4
/** Paper shrinks by up to 1 % more one way than the other; on whole circles from this radius on that is seen, pixels. */
const LEAST_OVAL = 30
const SHORTEST_PIECE = 4
const STRONG = 5

/** The curve round the circle through three places, once about or from the first through the second to the third. */
function curveRound(three: ThreePoints, { centre, radius }: Circle, whole: boolean): ReferenceCurve {
  const [a, b, c] = three.map((p) => Math.atan2(p[1] - centre[1], p[0] - centre[0])) as [
    number,
    number,
    number,
  ]
  if (whole) return roundCurve(centre, radius, a, 2 * Math.PI, radius < LEAST_OVAL ? undefined : [0, 0])
  const turn = (x: number) => ((x % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  const onward = turn(c - a)
  return roundCurve(centre, radius, a, turn(b - a) < onward ? onward : onward - 2 * Math.PI)
}

/** Looks for the round stroke near three places and traces it. */
export function detectCircle(
  grey: GreyWindow,
  three: ThreePoints,
  options: RoundOptions,
): AcceptedStroke | NoStroke {
  const reach = options.reach ?? REACH
  const whole = options.whole ?? true
  const rough = circleThrough(three)
  if (rough === null || rough.radius < SMALLEST_RADIUS) {
    return {
      kind: 'none',
      because: 'The three picks are on one line or too near one another. Pick them farther apart.',
    }
  }
  const curve = curveRound(three, rough, whole)
  const widest = Math.min(WIDEST, 1.2 * rough.radius)
  const half = mapReach(MOST_ENLARGED * reach, widest)
  const high = Math.min(half, rough.radius - 1)
  const strip = stripAlong(grey, curve, piecesFor(curve.length, SHORTEST_PIECE), -half, high)
  const map = pieceMap(strip, -half, high, widest)
  const noise = windowNoise(grey)
  const ways = waysRound(three, rough, strip, reach)
  let because = `No stroke was seen along this circle. ${BY_HAND}`
  for (const path of nearestFirst(roundPaths(map, ways, reach, curve.length, noise), reach)) {
    const settled = settleRound(grey, strip, map, path, ways, three, rough, whole, noise)
    if (typeof settled !== 'string') return settled
    because = settled
  }
  return { kind: 'none', because }
}

/** Where the circle through the three places, moved inwards by what steers it, lies in each piece. */
function waysRound(three: ThreePoints, rough: Circle, strip: Strip, reach: number): Across {
  const far = enlargement(three, rough, strip)
  const { centre, radius } = rough
  return (steer, out) => {
    const moved = circleThrough(movedBy(three, rough, steer))
    strip.pieces.forEach((p, k) => {
      out[k] = Number.NaN
      if (moved === null || (far[k] as number) > MOST_ENLARGED) return
      const [nx, ny] = strip.curve.across(p.middle)
      const dx = moved.centre[0] - centre[0]
      const dy = moved.centre[1] - centre[1]
      const along = -(nx * dx + ny * dy)
      const root = moved.radius ** 2 - dx * dx - dy * dy + along * along
      if (root > 0) out[k] = radius - along - Math.sqrt(root)
      if (Math.abs(out[k] as number) > MOST_ENLARGED * reach + WIDEST / 2) out[k] = Number.NaN
    })
  }
}

const movedBy = (three: ThreePoints, { centre, radius }: Circle, steer: readonly number[]): ThreePoints =>
  three.map(([x, y], i) => {
    const f = (steer[i] ?? 0) / radius
    return [x + (centre[0] - x) * f, y + (centre[1] - y) * f]
  }) as unknown as ThreePoints

/** By how much an error of the three picks is enlarged in each piece, to first order. */
function enlargement(three: ThreePoints, { centre, radius }: Circle, strip: Strip): number[] {
  const rows = three.map(([x, y]) => [(x - centre[0]) / radius, (y - centre[1]) / radius, 1])
  const square = new Float64Array(9)
  for (const row of rows)
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++)
        square[i * 3 + j] = (square[i * 3 + j] as number) + (row[i] as number) * (row[j] as number)
  const inverse = invertSpd(square, 3)
  return strip.pieces.map((p) => {
    if (inverse === null) return 1
    const [nx, ny] = strip.curve.across(p.middle)
    const here = [-nx, -ny, 1]
    return rows.reduce((sum, row) => {
      let share = 0
      for (let i = 0; i < 3; i++)
        for (let j = 0; j < 3; j++)
          share += (here[i] as number) * (inverse[i * 3 + j] as number) * (row[j] as number)
      return sum + Math.abs(share)
    }, 0)
  })
}

function roundPaths(map: PieceMap, ways: Across, reach: number, length: number, noise: number): Path[] {
  const places = new Float64Array(map.pieces)
  const paths: Path[] = []
  const step = Math.max(1, reach / 4)
  for (let a = -reach; a <= reach + 1e-9; a += step)
    for (let b = -reach; b <= reach + 1e-9; b += step)
      for (let c = -reach; c <= reach + 1e-9; c += step) {
        ways([a, b, c], places)
        const path = tryPath(map, [a, b, c], places, length, noise)
        if (path !== null && path.strength > STRONG) paths.push(path)
      }
  return paths
}

function settleRound(
  grey: GreyWindow,
  strip: Strip,
  map: PieceMap,
  seenFirst: Path,
  ways: Across,
  three: ThreePoints,
  rough: Circle,
  whole: boolean,
  noise: number,
): AcceptedStroke | string {
  const path = climbPath(map, seenFirst, ways, strip.curve.length, noise, [2, 0.25])
  const places = new Float64Array(map.pieces)
  ways(path.steer, places)
  const moved = movedBy(three, rough, path.steer)
  const round = circleThrough(moved)
  if (round === null) return `What is here does not settle to a circle. ${BY_HAND}`
  const width = map.widths.indexOf(path.width)
  const offsets = strip.pieces.map((_, k) => {
    const place = places[k] as number
    const bar = Number.isNaN(place) ? 0 : barAt(map, width, k, place) / path.contrast
    return bar > 0.45 && bar < 2 ? { offset: place, turn: turnAt(strip, places, k) } : null
  })
  const seen = { curve: strip.curve, offsets, width: path.width, contrast: path.contrast }
  const onto = curveRound(moved, round, whole)
  const traced = traceStroke(grey, strip, seen, onto, path.width / 2 + 9)
  if (traced === null) return `What is here does not settle to a circle. ${BY_HAND}`
  const inflation = acceptStroke(traced, { share: 0.4, length: Math.min(16, 0.5 * strip.curve.length) })
  return typeof inflation === 'string' ? inflation : { traced, inflation }
}

function turnAt(strip: Strip, places: Float64Array, k: number): number {
  const a = places[k - 1]
  const b = places[k + 1]
  const size = (strip.pieces[k]?.to ?? 1) - (strip.pieces[k]?.from ?? 0)
  return a === undefined || b === undefined || Number.isNaN(a + b) ? 0 : (b - a) / (2 * size)
}
