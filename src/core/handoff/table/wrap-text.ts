import { displayWidth } from './display-width.ts'
import { keepTogether, plainSpaces } from './keep-together.ts'

/**
 * Breaks a text at spaces into lines of at most `width` columns, never inside a quantity (`0.7 %`, `(u 0.02`);
 * what is longer than a line is broken where it must be.
 */
export function wrapText(text: string, width: number): string[] {
  const room = Math.max(1, Math.floor(width))
  const lines: string[] = []
  let line = ''
  for (const word of keepTogether(text)
    .split(' ')
    .filter((part) => part !== '')) {
    const joined = line === '' ? word : `${line} ${word}`
    if (displayWidth(joined) <= room) {
      line = joined
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const character of word) {
      if (line !== '' && displayWidth(line + character) > room) {
        lines.push(line)
        line = ''
      }
      line += character
    }
  }
  if (line !== '' || lines.length === 0) lines.push(line)
  return lines.map(plainSpaces)
}
