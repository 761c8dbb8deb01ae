import type { OffOneCircle } from '../../../core/job/from-picks/off-one-circle.ts'
import { pixelsInWords } from '../../strokes/uncertainty-words.ts'

/** That holes do not lie on one circle, and what now. */
export const holesOffInWords = ({ hole, by }: OffOneCircle): string =>
  hole === null
    ? `These holes do not lie on one circle: they are off it by up to ${pixelsInWords(by)}. Cancel, and pick only those that share one.`
    : `Hole ${hole + 1} lies ${pixelsInWords(by)} off the circle of the others. Is it one of them? Cancel, and pick them without it.`
