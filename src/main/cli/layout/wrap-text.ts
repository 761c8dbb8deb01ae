import wrapAnsi from 'wrap-ansi'
import { keepTogether, plainSpaces } from '../../../core/handoff/table/keep-together.ts'

/**
 * Breaks a text at spaces into lines of at most `width` columns, never inside a quantity (`0.7 %`, `(u 0.02`);
 * what is longer than a line is broken where it must be.
 */
export function wrapText(text: string, width: number): string[] {
  const words = keepTogether(text)
    .split(' ')
    .filter((word) => word !== '')
  return wrapAnsi(words.join(' '), Math.max(1, Math.floor(width)), { hard: true })
    .split('\n')
    .map(plainSpaces)
}
