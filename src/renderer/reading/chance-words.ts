import { percentage } from '../parts/budget-segments.ts'

/** A probability in words: `71 %`, and never all for what is not certain. */
export const chanceWords = (probability: number): string =>
  probability < 1 && Math.round(probability * 100) === 100 ? 'over 99 %' : percentage(probability)
