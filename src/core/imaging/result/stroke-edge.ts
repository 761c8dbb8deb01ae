import type { StrokeReading } from '../../job/model/types.ts'
import type { Inflation } from '../noise/residual-correlation.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import { marginalWidth } from './marginal-width.ts'

/** Where the wanted reading lies from the centre of a stroke, across its curve. */
export interface EdgeShift {
  /** Pixels. */
  shift: number
  /** Variance that the width adds to the place of an edge, pixels²; it is common to all of the stroke. */
  variance: number
}

export function edgeShift(reading: StrokeReading, traced: Traced, inflation: Inflation): EdgeShift {
  if (reading === 'centre') return { shift: 0, variance: 0 }
  const { width, variance } = marginalWidth(traced, inflation)
  return { shift: reading === 'left' ? -width / 2 : width / 2, variance: variance / 4 }
}
