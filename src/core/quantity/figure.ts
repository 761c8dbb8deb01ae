import type { Angle } from './angle.ts'
import type { GaugeStandard } from './gauges.ts'
import type { Length } from './length.ts'

/** How far above and below the stated size is allowed; both are sizes without sign. */
export interface Tolerance<T> {
  readonly plus: T
  readonly minus: T
}

export type FigureOf = 'length' | 'diameter' | 'radius' | 'centres' | 'angle' | 'gauge' | 'count'

/** A printed dimension, as written and as understood. */
export interface Figure {
  readonly text: string
  /** 'count' when it says nothing but how many. */
  readonly of: FigureOf
  /** Absent for angles and for bare counts; the thickness, for a gauge. */
  readonly length?: Length
  readonly angle?: Angle
  readonly gauge?: { readonly number: string; readonly standard: GaugeStandard }
  /** How many alike. */
  readonly count?: number
  readonly counted?: 'holes' | 'places'
  readonly tolerance?: Tolerance<Length>
  readonly angleTolerance?: Tolerance<Angle>
  readonly typical: boolean
  readonly drilled: boolean
  /** O.D. or I.D. */
  readonly side?: 'outside' | 'inside'
  /** SQ.: the side of a square. */
  readonly square?: boolean
}
