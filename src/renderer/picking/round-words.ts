import type { StrokeReading } from '../../core/job/model/types.ts'

/** What a reading of a round stroke is called. */
export const roundWords = (reading: StrokeReading): string =>
  reading === 'centre' ? 'centre' : reading === 'left' ? 'outer edge' : 'inner edge'
