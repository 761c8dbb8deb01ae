import type { StrokeReading } from '../../job/model/types.ts'
import { ROUNDED_BLUR } from '../fit/strip-fit.ts'
import type { Inflation } from '../noise/residual-correlation.ts'
import type { Traced } from '../trace/trace-stroke.ts'
import { hasTwoValues } from '../window/bilevel.ts'
import { lensVariance, thresholdVariance } from './edge-model.ts'
import { widthInFocusOrNot } from './width-in-focus.ts'

/** Where the wanted reading lies from the centre of a stroke, across its curve. */
export interface EdgeShift {
  /** Pixels. */
  shift: number
  /** Variance that the width adds to the place of an edge, pixels²; it is common to all of the stroke. */
  variance: number
}

export function edgeShift(reading: StrokeReading, traced: Traced, inflation: Inflation): EdgeShift {
  if (reading === 'centre') return { shift: 0, variance: 0 }
  const { strip, fit } = traced
  const isBilevel = hasTwoValues(strip.value)
  // How wide a stroke of one bit with sharp edges is its pixels tell by themselves.
  const { width, variance, blur } =
    isBilevel && fit.blur < ROUNDED_BLUR
      ? { width: fit.width, variance: 0, blur: fit.blur }
      : widthInFocusOrNot(traced, inflation)
  const ofScan = isBilevel ? thresholdVariance(width) : lensVariance({ width, blur })
  return { shift: reading === 'left' ? -width / 2 : width / 2, variance: variance / 4 + ofScan }
}
