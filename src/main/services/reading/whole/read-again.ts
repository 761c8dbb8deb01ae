import { type BoxOfFigure, isSameFigure } from '../../../../core/job/figures/figure-box.ts'
import type { FigureReading } from '../../../../core/reading/figure-reading.ts'

/** So many known figures more, fewer or otherwise make a hand another one; what one more changes is not worth the time. */
const OTHER_HAND = 5

/** By what figures are read again that were read already. */
export interface ReadAgain {
  /** Names of the figures that are known by now; empty: nothing is read again. */
  known: readonly string[]
  /** Where figures stand that somebody has taken or dismissed: they stay as they were seen. */
  lookedAt: readonly BoxOfFigure[]
}

/**
 * Whether a figure is to be read again: something is there, it is not clear, nobody has looked at it, and by now the hand
 * is another than it was read with.
 * @param knew names of the known figures that it was read by
 */
export function isDueAgain(
  { asRead, clear, box }: FigureReading,
  knew: readonly string[],
  { known, lookedAt }: ReadAgain,
): boolean {
  if (clear || asRead === '' || known.length === 0) return false
  if (Math.max(notIn(known, knew), notIn(knew, known)) < OTHER_HAND) return false
  return !lookedAt.some((other) => isSameFigure(other, box))
}

/** How many of some names are not among others. */
function notIn(names: readonly string[], others: readonly string[]): number {
  const there = new Set(others)
  return names.filter((name) => !there.has(name)).length
}
