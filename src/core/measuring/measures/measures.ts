import type { Measure } from '../../job/model/types.ts'
import { angle } from './angle.ts'
import { area } from './area.ts'
import { centres } from './centres.ts'
import { diameter } from './diameter.ts'
import { distance } from './distance.ts'
import { radius } from './radius.ts'
import { run } from './run.ts'
import { slotLength } from './slot-length.ts'
import { slotWidth } from './slot-width.ts'
import { spacing } from './spacing.ts'
import type { TrueMeasure } from './true-measure.ts'

/** Every measure: a pure function of features in true size (mm), with its derivative by every coordinate. */
export const MEASURES: Record<Measure, TrueMeasure> = {
  distance,
  spacing,
  diameter,
  radius,
  centres,
  'slot-width': slotWidth,
  'slot-length': slotLength,
  angle,
  run,
  area,
}
