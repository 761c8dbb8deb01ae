/** A part of an uncertainty budget as it is drawn. */
interface BudgetSegment {
  source: string
  /** Share of the variance, 0..1. */
  share: number
  /** 0 for the largest: which hatch it has. */
  hatch: number
}

/** More than these can't be told apart in one bar. */
const MOST_SEGMENTS = 6

/**
 * The shares of a budget, largest first; beyond six the rest is summed as `others (n)`.
 * @param budget shares of the variance that sum to 1
 */
export function budgetSegments(budget: readonly { source: string; share: number }[]): BudgetSegment[] {
  const sorted = [...budget].sort((a, b) => b.share - a.share)
  const shown = sorted.length <= MOST_SEGMENTS ? sorted : sorted.slice(0, MOST_SEGMENTS - 1)
  const rest = sorted.slice(shown.length)
  const others = { source: `others (${rest.length})`, share: rest.reduce((sum, { share }) => sum + share, 0) }
  return [...shown, ...(rest.length === 0 ? [] : [others])].map((part, hatch) => ({ ...part, hatch }))
}

/** A share as a percentage: `71 %`, and `under 1 %` rather than 0 for what is there. */
export function percentage(share: number): string {
  const percent = Math.round(share * 100)
  return percent === 0 && share > 0 ? 'under 1 %' : `${percent} %`
}
