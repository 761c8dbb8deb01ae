import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { differ } from '../../uncertainty/analysis-of-variance.ts'
import { chiSquareExceeds } from '../../uncertainty/distributions.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'

/** Picks that scatter so much more than their sigma happen by chance once in a thousand marks. */
const IMPROBABLE = 0.001

/** Names every line and every repeated point whose picks scatter more than their stated sigma allows. */
export function scatterCautions(features: Iterable<Feature>): AnyReason[] {
  const cautions: AnyReason[] = []
  for (const { mark, scatter } of features) {
    if (scatter === undefined || !(scatter.sigma > 0)) continue
    const { squares, dof, sigma } = scatter
    if (chiSquareExceeds(squares / sigma ** 2, dof) >= IMPROBABLE) continue
    const s = Math.sqrt(squares / dof)
    cautions.push(reason('caution.picks-scatter', { mark, s, sigma }))
  }
  return cautions
}

/** Names every mark that the people who picked it do not pick alike. */
export function peopleCautions(features: Iterable<Feature>): AnyReason[] {
  const cautions: AnyReason[] = []
  for (const { mark, people } of features) {
    if (people === undefined || !differ(people)) continue
    const { n, within, between } = people
    if (within === null || between === null) continue
    cautions.push(reason('caution.people-differ', { mark, people: n, within, between }))
  }
  return cautions
}
