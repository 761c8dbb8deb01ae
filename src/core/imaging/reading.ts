import type { StrokeReading } from '../job/types.ts'
import type { Inflation } from './residual-correlation.ts'
import type { StripFit } from './strip-fit.ts'

/** Pixels from the centre of a stroke to the wanted reading, across the guide. */
export const readingShift = (reading: StrokeReading, width: number): number =>
  reading === 'centre' ? 0 : reading === 'left' ? -width / 2 : width / 2

/** Variance that the width adds to the place of an edge, pixels²; it is common to all of the stroke. */
export function readingVariance(reading: StrokeReading, fit: StripFit, inflation: Inflation): number {
  if (reading === 'centre') return 0
  const m = Math.sqrt(fit.inverse.length)
  const unit = fit.inverse[(m - 2) * m + m - 2] as number
  return (fit.variance * inflation.width * unit * fit.width ** 2) / 4
}
