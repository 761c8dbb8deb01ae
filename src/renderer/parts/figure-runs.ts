/** A piece of a written figure: plain text, or a fraction that is set stacked, with the whole number before it. */
export type FigureRun = { text: string } | { whole?: string; numerator: string; denominator: string }

/**
 * A fraction with at most one blank between it and its whole number. No part of a decimal, of a word or of a longer
 * row of strokes is one.
 */
const FRACTION = /(?<![\p{L}\p{N}_./⁄])(?:(\d+) )?(\d+)\/(\d+)(?![\d/⁄_]|\.\d)/gu

/**
 * Splits what is written in shop notation into runs: `1'-2 3/8" ± 0.075"` is the text `1'-`, two and three eighths,
 * and the text `" ± 0.075"`. `plainRun` of all runs, joined, gives the text back.
 */
export function figureRuns(text: string): FigureRun[] {
  const runs: FigureRun[] = []
  let from = 0
  for (const match of text.matchAll(FRACTION)) {
    const [all, whole, numerator = '', denominator = ''] = match
    if (match.index > from) runs.push({ text: text.slice(from, match.index) })
    runs.push(whole === undefined ? { numerator, denominator } : { whole, numerator, denominator })
    from = match.index + all.length
  }
  if (from < text.length) runs.push({ text: text.slice(from) })
  return runs
}

/** A run as it was written. */
export function plainRun(run: FigureRun): string {
  if ('text' in run) return run.text
  return `${run.whole === undefined ? '' : `${run.whole} `}${run.numerator}/${run.denominator}`
}

/** Feet and inches with air about the dash, for the eye: close together `2'-0 5/8"` runs into one. */
export const spaced = (text: string): string => text.replaceAll("'-", "'\u2009-\u2009")

/** A stated value, and what stands beside it: the figure that it is near, what it was worked out from, its tolerance. */
export function besideValue(text: string): { value: string; beside: string } {
  const at = text.search(/, (?:near|from) | \(tolerance /)
  return at < 0 ? { value: text, beside: '' } : { value: text.slice(0, at), beside: text.slice(at) }
}
