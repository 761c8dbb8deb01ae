import type { Feature } from '../../measuring/features/feature-of-mark.ts'
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
