import { element } from '../linear-algebra/element.ts'
import type { Uncertain } from './uncertain.ts'

export interface Contribution {
  source: string
  /** Share of the variance, 0..1. */
  share: number
}

/** M2 before M12. */
const BY_LABEL = new Intl.Collator('en', { numeric: true })

/** Rounding alone must not put one before the other. */
const billionths = ({ share }: Contribution): number => Math.round(1e9 * share)

/**
 * The uncertainty budget: shares of the variance by what they come from, largest first, summing to 1;
 * empty when the value is exact. Sources with one label are counted together; of equal shares the one whose label comes
 * first, so that no result depends on which source was made first.
 */
export function uncertaintyBudget(x: Uncertain): Contribution[] {
  const byLabel = new Map<string, number>()
  let total = 0
  for (let i = 0; i < x.sources.length; i++) {
    const part = (x.coefficients[i] ?? Number.NaN) ** 2
    if (part === 0) continue
    const { label } = element(x.sources, i)
    byLabel.set(label, (byLabel.get(label) ?? 0) + part)
    total += part
  }
  return [...byLabel]
    .map(([source, part]) => ({ source, share: part / total }))
    .sort(
      (a, b) =>
        billionths(b) - billionths(a) ||
        BY_LABEL.compare(a.source, b.source) ||
        (a.source < b.source ? -1 : 1),
    )
}
