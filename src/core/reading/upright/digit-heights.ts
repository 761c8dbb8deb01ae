import type { InkPart } from './label-ink.ts'

/** Parts lower than this share of the highest are marks, bars and scraps. */
const MARK = 0.4
/** Rows are told apart from broken digits by how far beyond one digit the lettering goes. */
const [ONE_ROW, STACKED] = [1.25, 2.8]

/**
 * What height a full digit may have, pixels of the field, the likeliest first. Digits that touch their fraction's bar, or
 * that are broken, are no height of their own: then the whole of the lettering tells of it.
 * @param angle degrees clockwise by which the lettering is turned
 */
export function digitHeights(parts: readonly InkPart[], fieldWidth: number, angle: number): number[] {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const spans = parts.map(({ places }) => {
    let [least, most] = [Infinity, -Infinity]
    for (const at of places) {
      const down = Math.floor(at / fieldWidth) * c - (at % fieldWidth) * s
      least = Math.min(least, down)
      most = Math.max(most, down)
    }
    return { least, most, high: most - least + 1 }
  })
  const highest = Math.max(...spans.map(({ high }) => high))
  const glyphs = spans.filter(({ high }) => high > MARK * highest).sort((a, b) => a.high - b.high)
  // Of few glyphs the highest may be a fraction that hangs together: the one below it is as likely.
  const high = glyphs[Math.floor(0.7 * (glyphs.length - 1))]?.high ?? highest
  const whole = Math.max(...spans.map(({ most }) => most)) - Math.min(...spans.map(({ least }) => least)) + 1
  const heights = [high]
  if (whole > ONE_ROW * high) heights.push(whole < STACKED * high && whole > 1.7 * high ? whole / 2 : whole)
  if (highest > ONE_ROW * high) heights.push(highest)
  else if (glyphs.length <= 2) heights.push(high / 2.2)
  return heights.filter((one, i) => heights.findIndex((other) => Math.abs(other / one - 1) < 0.15) === i)
}
