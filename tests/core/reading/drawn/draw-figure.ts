import { createCanvas } from '@napi-rs/canvas'
import { formatFigure } from '../../../../src/core/quantity/format/format-figure.ts'
import type { LengthUnit } from '../../../../src/core/quantity/length.ts'
import { parseFigure } from '../../../../src/core/quantity/parse/parse-figure.ts'
import { type Dice, dice } from './dice.ts'
import type { Face } from './face.ts'
import { type FigurePart, linear, type PlannedFigure, planned } from './figure-parts.ts'
import type { DrawnGrey } from './grey.ts'
import { faceOf, hasCurlyQuotes, hasSmallLetters, type LetteringName } from './letterings.ts'
import { LEVEL, type Level, within } from './levels.ts'
import { inkOf, scanInk } from './scan-ink.ts'
import { drawSetFigure, type FractionLayout, type SetFigure, setFigure } from './set-figure.ts'
import { drawCrossing, drawSurroundings } from './surroundings.ts'
import { breakStrokes, drawSpecks } from './wear.ts'

/** What to draw, and how. */
export interface FigureOrder {
  /** In one line of signs, `\n` between two lines; or by its parts. */
  readonly figure: string | PlannedFigure
  readonly lettering: LetteringName
  /** Height of a full digit, pixels: 14 to 60. */
  readonly height: number
  /** Degrees clockwise by which the lettering is turned from level; −90 is read from the right. */
  readonly angle: number
  readonly layout: FractionLayout
  readonly level: Level
  readonly seed: number
  /** What a bare number means where the figure is a string; inches unless said otherwise. */
  readonly unit?: LengthUnit
  /** Draws its glyphs where they are not those of `lettering`, whose ways of setting are kept. */
  readonly face?: (d: Dice) => Face
}

/** Where a figure truly stands. */
export interface FigureFrame {
  /** Pixels, x right and y down; a whole number is the middle of a pixel's edge, as on a canvas. */
  readonly centre: readonly [number, number]
  /** Along the reading and across it, pixels. */
  readonly width: number
  readonly height: number
  /** Degrees clockwise. */
  readonly angle: number
  /** Upright box round the turned one: [x, y, width, height], pixels. */
  readonly box: readonly [number, number, number, number]
}

/** A drawn figure with all that is true of it. */
export interface DrawnFigure {
  readonly grey: DrawnGrey
  /** The truth, in the notation of `formatFigure`. */
  readonly text: string
  /** What is drawn, sign by sign in one line. */
  readonly written: string
  readonly unit: LengthUnit
  readonly frame: FigureFrame
  /** Height of a full digit, pixels. */
  readonly height: number
  readonly lettering: LetteringName
  readonly layout: FractionLayout
  readonly level: Level
  readonly lines: number
}

/** A figure as the one standard notation has it. */
export const standard = (written: string, unit: LengthUnit): string =>
  formatFigure(parseFigure(written, { unit }))

const mapText = (figure: PlannedFigure, map: (signs: string) => string): PlannedFigure => ({
  ...figure,
  lines: figure.lines.map((parts) =>
    parts.map((part): FigurePart => (part.kind === 'text' ? { ...part, text: map(part.text) } : part)),
  ),
})

const titled = (signs: string): string =>
  signs.replace(/\b(HOLES|DRILL|DIA|RAD|TYP)\b/g, (word) => `${word[0]}${word.slice(1).toLowerCase()}`)

/** The same signs as this lettering has them: small letters, quotes that curl, longer dashes. */
export function inLettering(figure: PlannedFigure, lettering: LetteringName, d: Dice): PlannedFigure {
  let set = figure
  if (hasSmallLetters(lettering) && d.happens(0.35)) set = mapText(set, titled)
  if (hasCurlyQuotes(lettering) && d.happens(0.5)) {
    set = mapText(set, (signs) => signs.replaceAll("'", '’').replaceAll('"', '”'))
  }
  return hasSmallLetters(lettering) && d.happens(0.4)
    ? mapText(set, (signs) => signs.replaceAll('-', '–'))
    : set
}

/** The frame of a figure that was set, with its origin put at `at` and turned. */
export function frameOf(set: SetFigure, at: readonly [number, number], angle: number): FigureFrame {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
  const [x, y] = [(set.left + set.right) / 2, (set.top + set.bottom) / 2]
  const [width, height] = [set.right - set.left, set.bottom - set.top]
  const centre = [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos] as const
  const across = width * Math.abs(cos) + height * Math.abs(sin)
  const down = width * Math.abs(sin) + height * Math.abs(cos)
  return { centre, width, height, angle, box: [centre[0] - across / 2, centre[1] - down / 2, across, down] }
}

/** Draws a figure as it would stand on a scan, with a margin and what may lie beside it. */
export async function drawFigure(order: FigureOrder): Promise<DrawnFigure> {
  const { lettering, height: h, angle, layout, level, seed } = order
  const figure = typeof order.figure === 'string' ? planned(order.figure, order.unit ?? 'in') : order.figure
  const written = linear(figure)
  const d = dice(seed)
  const set = setFigure(
    inLettering(figure, lettering, d),
    order.face?.(d) ?? faceOf(lettering, d),
    h,
    layout,
    d,
  )
  const still = frameOf(set, [0, 0], angle)
  const margins = Array.from({ length: 4 }, () => h * d.between(0.8, 1.8)) as [number, number, number, number]
  const size = [
    Math.ceil(still.box[2] + margins[0] + margins[1]),
    Math.ceil(still.box[3] + margins[2] + margins[3]),
  ] as const
  const at = [margins[0] - still.box[0], margins[2] - still.box[1]] as const
  const of = LEVEL[level]
  const context = createCanvas(...size).getContext('2d')
  context.save()
  context.translate(...at)
  context.rotate((angle * Math.PI) / 180)
  drawSetFigure(context, set)
  breakStrokes(context, set, of, d)
  if (d.happens(of.surrounded)) drawSurroundings(context, set, d)
  if (d.happens(of.crossed)) drawCrossing(context, set, d)
  context.restore()
  drawSpecks(context, size, h, within(of.specks, d), d)
  const ink = inkOf(context.getImageData(0, 0, ...size).data, ...size)
  return {
    grey: await scanInk(ink, h, level, d),
    text: standard(written, figure.unit),
    written,
    unit: figure.unit,
    frame: frameOf(set, at, angle),
    height: h,
    lettering,
    layout,
    level,
    lines: figure.lines.length,
  }
}
