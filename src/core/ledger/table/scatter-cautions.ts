import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { chiSquareExceeds } from '../../uncertainty/distributions.ts'

/** Picks that scatter so much more than their sigma happen by chance once in a thousand marks. */
const IMPROBABLE = 0.001

/** Names every line and every repeated point whose picks scatter more than their stated sigma allows. */
export function scatterCautions(features: Iterable<Feature>): string[] {
  const cautions: string[] = []
  for (const { mark, scatter } of features) {
    if (scatter === undefined || !(scatter.sigma > 0)) continue
    const { squares, dof, sigma } = scatter
    if (chiSquareExceeds(squares / sigma ** 2, dof) >= IMPROBABLE) continue
    const s = Math.sqrt(squares / dof)
    cautions.push(
      `Mark ${mark}: its picks scatter by ${s.toFixed(1)} px, more than their sigma of ${sigma} px allows. Pick it again, or state a larger sigma.`,
    )
  }
  return cautions
}
