import type { FigureReading } from '../../core/reading/figure-reading.ts'
import { chanceWords } from './chance-words.ts'

/** How sure a reading is, in a word and where that is not all in a number: `clear`, `doubtful: 71 %`. */
export function sureWords({
  clear,
  text,
  probability,
}: Pick<FigureReading, 'clear' | 'text' | 'probability'>): string {
  if (text === null) return 'no figure'
  return clear ? 'clear' : `doubtful: ${chanceWords(probability)}`
}
