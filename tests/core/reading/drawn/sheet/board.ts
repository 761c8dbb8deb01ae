import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas'
import type { LengthUnit } from '../../../../../src/core/quantity/length.ts'
import type { Dice } from '../dice.ts'
import { type FigureFrame, frameOf, inLettering, standard } from '../draw-figure.ts'
import { drawArrowhead, drawLine } from '../draw-line.ts'
import { linear, type PlannedFigure, text } from '../figure-parts.ts'
import { faceOf, type LetteringName } from '../letterings.ts'
import { drawSetFigure, type FractionLayout, type SetFigure, setFigure } from '../set-figure.ts'

export type Place = readonly [number, number]
type Box = readonly [number, number, number, number]

/** A figure on a sheet, and where it truly stands. */
export interface SheetFigure {
  /** In the notation of `formatFigure`. */
  readonly text: string
  readonly written: string
  readonly frame: FigureFrame
  /** Height of a full digit, pixels. */
  readonly height: number
}

/** Lettering on a sheet that is no dimension: notes, lists, titles. */
export interface SheetWords {
  readonly text: string
  readonly frame: FigureFrame
}

/** How one draughtsman draws one sheet. */
export interface SheetWays {
  readonly unit: LengthUnit
  readonly lettering: LetteringName
  readonly layout: FractionLayout
  /** Height of a full digit in figures, pixels. */
  readonly height: number
  /** Figures over their line, or in a gap of it. */
  readonly over: boolean
  /** Width of an outline, pixels; what is only measured by is half of it. */
  readonly outline: number
  /** Pixels to a true unit. */
  readonly scale: number
}

interface Waiting {
  readonly set: SetFigure
  readonly at: Place
  readonly frame: FigureFrame
}

const overlap = (a: Box, b: Box, gap: number): boolean =>
  a[0] < b[0] + b[2] + gap && b[0] < a[0] + a[2] + gap && a[1] < b[1] + b[3] + gap && b[1] < a[1] + a[3] + gap

/** Turned so that it reads from the bottom of the sheet or from its right: ISO 129-1:2018, 6.2 (from memory). */
export function readingAngle(degrees: number): number {
  const half = ((degrees % 180) + 180) % 180
  return half >= 89.9 ? half - 180 : half
}

/** A sheet while it is drawn: lines at once, lettering last, for which lines make room. */
export class Board {
  readonly context: SKRSContext2D
  readonly figures: SheetFigure[] = []
  readonly words: SheetWords[] = []
  readonly #waiting: Waiting[] = []
  constructor(
    readonly width: number,
    readonly height: number,
    readonly ways: SheetWays,
    readonly d: Dice,
  ) {
    this.context = createCanvas(width, height).getContext('2d')
  }

  line(from: Place, to: Place, weight = 1, dashes: readonly number[] = []): void {
    drawLine(this.context, from, to, this.ways.outline * weight, dashes)
  }

  outline(points: readonly Place[], weight = 1): void {
    points.forEach((point, i) => {
      this.line(point, points[(i + 1) % points.length] ?? point, weight)
    })
  }

  circle([x, y]: Place, radius: number, weight = 1): void {
    this.context.lineWidth = this.ways.outline * weight
    this.context.beginPath()
    this.context.arc(x, y, radius, 0, 2 * Math.PI)
    this.context.stroke()
  }

  arrowhead(at: Place, points: number): void {
    drawArrowhead(this.context, at, points, this.ways.height * 0.6)
  }

  /** Through a centre, as a chain line. */
  centreLine(from: Place, to: Place): void {
    const h = this.ways.height
    this.line(from, to, 0.45, [2.2 * h, 0.3 * h, 0.4 * h, 0.3 * h])
  }

  set(figure: PlannedFigure, height = this.ways.height, lettering = this.ways.lettering): SetFigure {
    const { d } = this
    return setFigure(inLettering(figure, lettering, d), faceOf(lettering, d), height, this.ways.layout, d)
  }

  /** Where a figure that was set would stand with its middle at a place; undefined where there is no room for it. */
  room(set: SetFigure, centre: Place, angle: number): Waiting | undefined {
    const still = frameOf(set, [0, 0], angle)
    const at = [centre[0] - still.centre[0], centre[1] - still.centre[1]] as const
    const frame = frameOf(set, at, angle)
    const [x, y, w, h] = frame.box
    const margin = 1.5 * this.ways.height
    if (x < margin || y < margin || x + w > this.width - margin || y + h > this.height - margin)
      return undefined
    const taken = this.#waiting.some((other) => overlap(frame.box, other.frame.box, 0.7 * this.ways.height))
    return taken ? undefined : { set, at, frame }
  }

  /** Letters a dimension at a place that `room` gave. */
  figure(planned: PlannedFigure, place: Waiting): void {
    this.#waiting.push(place)
    const written = linear(planned)
    const { frame, set } = place
    this.figures.push({ text: standard(written, planned.unit), written, frame, height: set.height })
  }

  /** Letters words from their left end on a baseline, and says how wide they are. */
  letter(words: string, [x, y]: Place, height: number, lettering: LetteringName): number {
    const set = this.set({ lines: [[text(words)]], unit: this.ways.unit }, height, lettering)
    const at = [x - set.left, y] as const
    const frame = frameOf(set, at, 0)
    this.#waiting.push({ set, at, frame })
    this.words.push({ text: words, frame })
    return frame.width
  }

  /** Keeps a part of the sheet free of figures. */
  reserve([x, y, width, height]: Box): void {
    const frame = { centre: [x + width / 2, y + height / 2] as const, width, height, angle: 0 }
    const nothing = this.set({ lines: [[]], unit: this.ways.unit })
    this.#waiting.push({ set: nothing, at: [x, y], frame: { ...frame, box: [x, y, width, height] } })
  }

  /** Draws all lettering, each in a clear place of its own. */
  finish(): void {
    const { context } = this
    for (const { set, at, frame } of this.#waiting) {
      if (set.glyphs.length === 0) continue
      const turn = (frame.angle * Math.PI) / 180
      const clear = 0.3 * set.height
      context.save()
      context.translate(...frame.centre)
      context.rotate(turn)
      context.clearRect(
        -frame.width / 2 - clear,
        -frame.height / 2 - clear / 2,
        frame.width + 2 * clear,
        frame.height + clear,
      )
      context.restore()
      context.save()
      context.translate(...at)
      context.rotate(turn)
      drawSetFigure(context, set)
      context.restore()
    }
  }
}
