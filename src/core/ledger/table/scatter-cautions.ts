import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { differ } from '../../uncertainty/analysis-of-variance.ts'
import { chiSquareExceeds } from '../../uncertainty/distributions.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { onceFor } from '../kept/once-for.ts'

/** Picks that scatter so much more than their sigma happen by chance once in a thousand marks. */
const IMPROBABLE = 0.001

/** Of a line or a repeated point whose picks scatter more than their stated sigma allows. */
export const scatterCaution = onceFor(({ mark, scatter }: Feature): AnyReason | null => {
  if (scatter === undefined || !(scatter.sigma > 0)) return null
  const { squares, dof, sigma } = scatter
  if (chiSquareExceeds(squares / sigma ** 2, dof) >= IMPROBABLE) return null
  return reason('caution.picks-scatter', { mark, s: Math.sqrt(squares / dof), sigma })
})

/** Of a mark that the people who picked it do not pick alike. */
export const peopleCaution = onceFor(({ mark, people }: Feature): AnyReason | null => {
  if (people === undefined || !differ(people)) return null
  const { n, within, between } = people
  if (within === null || between === null) return null
  return reason('caution.people-differ', { mark, people: n, within, between })
})
