import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { differ } from '../../uncertainty/analysis-of-variance.ts'
import { chiSquareExceeds } from '../../uncertainty/distributions.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'

/** What a person should know of how the picks of a mark scatter; null where there is nothing to say. */
export interface ScatterCautions {
  /** More than their stated sigma allows. */
  readonly picks: AnyReason | null
  /** The people who picked it do not pick alike. */
  readonly people: AnyReason | null
}

/** Those of the features whose picks tell anything of their scatter, in their order. */
export type CautionsByFeature = ReadonlyMap<Feature, ScatterCautions>

/** @param before of a feature that is still the same they are taken from it */
export function scatterCautions(features: Iterable<Feature>, before?: CautionsByFeature): CautionsByFeature {
  const cautions = new Map<Feature, ScatterCautions>()
  for (const feature of features) {
    if (feature.scatter === undefined && feature.people === undefined) continue
    const was = before?.get(feature)
    cautions.set(feature, was ?? { picks: ofPicks(feature), people: ofPeople(feature) })
  }
  return cautions
}

/** Picks that scatter so much more than their sigma happen by chance once in a thousand marks. */
const IMPROBABLE = 0.001

function ofPicks({ mark, scatter }: Feature): AnyReason | null {
  if (scatter === undefined || !(scatter.sigma > 0)) return null
  const { squares, dof, sigma } = scatter
  if (chiSquareExceeds(squares / sigma ** 2, dof) >= IMPROBABLE) return null
  return reason('caution.picks-scatter', { mark, s: Math.sqrt(squares / dof), sigma })
}

function ofPeople({ mark, people }: Feature): AnyReason | null {
  if (people === undefined || !differ(people)) return null
  const { n, within, between } = people
  if (within === null || between === null) return null
  return reason('caution.people-differ', { mark, people: n, within, between })
}
