import type { GlyphReader } from '../../../../src/core/reading/box/glyph-reader.ts'
import { glyphsOfKnownFigure } from '../../../../src/core/reading/box/known-figure.ts'
import { type Hand, likelierBy } from '../../../../src/core/reading/hand/hand.ts'
import type { NamedGlyph } from '../../../../src/core/reading/hand/learn-hand.ts'
import { type Dice, dice } from '../drawn/dice.ts'
import { type DrawnFigure, drawFigure } from '../drawn/draw-figure.ts'
import type { LetteringName } from '../drawn/letterings.ts'
import type { Level } from '../drawn/levels.ts'
import { FIGURE_KINDS, someFigure } from '../drawn/some-figure.ts'
import { draggedBox } from './box-reader.ts'

/** A sheet in one lettering and one state. */
export interface HandSheet {
  readonly lettering: LetteringName
  readonly level: Level
  readonly seed: number
}

/** The n-th figure of a sheet; its letters as high as any on the sheet, level or read from the right. */
export async function figureOfHand({ lettering, level, seed }: HandSheet, n: number): Promise<DrawnFigure> {
  const d: Dice = dice(seed, n)
  return drawFigure({
    figure: someFigure(d.pick(FIGURE_KINDS), d),
    lettering,
    height: Math.round(d.between(18, 34)),
    angle: (d.happens(0.3) ? -90 : 0) + d.between(-1.5, 1.5),
    layout: d.pick(['stacked', 'stacked', 'diagonal', 'inline'] as const),
    level,
    seed: d.whole(1, 2 ** 30),
  })
}

/** Figures of a sheet from one number to the next, the last one not among them. */
export async function figuresOfHand(sheet: HandSheet, from: number, to: number): Promise<DrawnFigure[]> {
  const figures: DrawnFigure[] = []
  for (let n = from; n < to; n++) figures.push(await figureOfHand(sheet, n))
  return figures
}

const pictureOf = ({ grey: { width, height, pixels } }: DrawnFigure) => ({
  left: 0,
  top: 0,
  width,
  height,
  data: pixels,
})

/** The named glyphs of a drawn figure in a box dragged round it. @param text what somebody says that it is */
export const lessonOf = (
  reader: GlyphReader,
  figure: DrawnFigure,
  text = figure.text,
): readonly NamedGlyph[] =>
  glyphsOfKnownFigure(reader, pictureOf(figure), { box: draggedBox(figure, 1), text })

/** The same where its true frame is known, which takes less time. */
export function lessonInFrame(reader: GlyphReader, figure: DrawnFigure, text: string): readonly NamedGlyph[] {
  const { centre, width, height, angle } = figure.frame
  const [wide, high] = [width + 0.3 * figure.height, height + 0.3 * figure.height]
  const box = { x: centre[0] - wide / 2, y: centre[1] - high / 2, width: wide, height: high, angle }
  return glyphsOfKnownFigure(reader, pictureOf(figure), { box, text })
}

/** How many of some figures and glyphs are taken for others. */
export interface HandScore {
  readonly figures: number
  /** Figures of which a glyph is taken for another. */
  readonly figuresWrong: number
  readonly glyphs: number
  readonly glyphsWrong: number
  /** Sum of the logarithms of the probabilities of the true names, negative. */
  readonly logs: number
}

/** Names glyphs with a hand. @param figures glyphs of each with their true names */
export function scoreHand(hand: Hand | undefined, figures: readonly (readonly NamedGlyph[])[]): HandScore {
  const score = { figures: 0, figuresWrong: 0, glyphs: 0, glyphsWrong: 0, logs: 0 }
  for (const named of figures) {
    if (named.length === 0) continue
    let wrong = 0
    for (const { glyph, logs, traits } of named) {
      const told = likelierBy(hand, logs, traits)
      const most = Math.max(...told)
      const own = told[glyph] ?? Number.NEGATIVE_INFINITY
      wrong += own < most ? 1 : 0
      score.logs += own - most - Math.log(told.reduce((sum, v) => sum + Math.exp(v - most), 0))
    }
    score.figures += 1
    score.figuresWrong += wrong > 0 ? 1 : 0
    score.glyphs += named.length
    score.glyphsWrong += wrong
  }
  return score
}
