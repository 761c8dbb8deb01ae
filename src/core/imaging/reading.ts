import type { StrokeReading } from '../job/model/types.ts'
import type { Inflation } from './residual-correlation.ts'
import { soundWidth } from './sound-width.ts'
import type { Traced } from './trace-stroke.ts'

/** Where the wanted reading lies from the centre of a stroke, across its guide. */
export interface ReadingShift {
  /** Pixels. */
  shift: number
  /** Variance that the width adds to the place of an edge, pixels²; it is common to all of the stroke. */
  variance: number
}

export function readingShift(reading: StrokeReading, traced: Traced, inflation: Inflation): ReadingShift {
  if (reading === 'centre') return { shift: 0, variance: 0 }
  const { width, variance } = soundWidth(traced, inflation)
  return { shift: reading === 'left' ? -width / 2 : width / 2, variance: variance / 4 }
}
