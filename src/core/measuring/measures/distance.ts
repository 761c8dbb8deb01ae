import { between } from './between.ts'
import { pointAt, type TrueMeasure } from './true-measure.ts'

/** Point, point: how far they are apart. */
export const distance: TrueMeasure = ([a, b]) => between(pointAt(a, 0), pointAt(b, 0))
