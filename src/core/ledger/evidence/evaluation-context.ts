import type { Job, Unit } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import type { CalibratedView } from '../views/calibrate-view.ts'
import type { Figures } from './figures.ts'
import type { InstrumentSources } from './found-evidence.ts'
import type { Valuation } from './valuation.ts'

/** What evidence is evaluated with. */
export interface EvaluationContext {
  job: Job
  /** The unit that lengths are looked at in. */
  unit: Unit
  views: ReadonlyMap<string, CalibratedView>
  featureOf(id: string): Feature
  instruments: InstrumentSources
  figures: Figures
  /** Whether a dimension was decided before and has a value. */
  hasValue(name: string): boolean
  /** By first order, with the dimensions that were decided before. */
  within: Valuation<Uncertain>
}
