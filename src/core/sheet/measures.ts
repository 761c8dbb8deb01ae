import type { Measure } from '../job/types.ts'
import { angle } from './measures/angle.ts'
import { area } from './measures/area.ts'
import { centres } from './measures/centres.ts'
import { diameter } from './measures/diameter.ts'
import { distance } from './measures/distance.ts'
import { radius } from './measures/radius.ts'
import { run } from './measures/run.ts'
import type { TrueMeasure } from './measures/shape.ts'
import { spacing } from './measures/spacing.ts'

/** Every measure: a pure function of features in true size (mm), with its derivative by every coordinate. */
export const MEASURES: Record<Measure, TrueMeasure> = {
  distance,
  spacing,
  diameter,
  radius,
  centres,
  angle,
  run,
  area,
}
