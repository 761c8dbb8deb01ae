import type { Conventions } from '../../job/model/conventions.ts'
import type { Instrument, Mark, Unit } from '../../job/model/types.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import type { Source } from '../../uncertainty/source.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import type { FiguresAs } from '../units/look.ts'
import type { CalibratedView } from '../views/calibrate-view.ts'
import type { Figures } from './figures.ts'
import type { ScatterPool } from './scatter-pools.ts'
import type { Valuation, WorkOut } from './valuation.ts'

/** What the evidence of a dimension is evaluated with: nothing else of the job may come into it. */
export interface EvaluationContext {
  conventions: Conventions
  /** The unit that lengths are looked at in. */
  unit: Unit
  figuresAs: FiguresAs
  /** Those of the dimension. */
  figures: Figures
  /** The finest fraction in common use in the job; null when there is none. */
  finest: number | null
  viewOf(id: string): CalibratedView | undefined
  /** Throws GeometryError when the mark determines no feature. */
  featureOf(id: string): Feature
  /** undefined: the job has no such mark. */
  markOf(id: string): Mark | undefined
  instrumentOf(id: string): Instrument | undefined
  /** What an instrument is off by, the same for all that was measured with it. */
  limitOf(instrument: Instrument): Source
  /** How readings scatter, over all that were taken with one instrument. */
  scatterOf(pool: string): ScatterPool | undefined
  /** Whether a dimension was decided before and has a value. */
  hasValue(name: string): boolean
  /** How a dimension that was decided before comes about, where first order does not hold for it; null where it does. */
  curved(name: string): WorkOut | null
  /** By first order, with the dimensions that were decided before. */
  within: Valuation<Uncertain>
}
