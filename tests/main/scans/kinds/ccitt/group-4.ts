import { BitWriter } from '../bit-writer.ts'
import type { Picture } from '../picture.ts'
import { END_OF_LINE } from './codes.ts'
import { blackLines, type Line, writeAgainst } from './lines.ts'

/** Group 4: each line against the one above, the first against a white one. Source: ITU-T T.6. */
export function group4(whole: Picture): Buffer {
  const out = new BitWriter()
  let above: Line = new Array(whole.width).fill(false)
  for (const line of blackLines(whole)) {
    writeAgainst(out, line, above)
    above = line
  }
  out.code(END_OF_LINE + END_OF_LINE)
  return out.bytes()
}
