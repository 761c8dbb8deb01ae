import { BitWriter } from '../bit-writer.ts'
import type { Picture } from '../picture.ts'
import { END_OF_LINE } from './codes.ts'
import { blackLines, writeAgainst, writeRuns } from './lines.ts'

/** Lines whose runs are coded one-dimensionally, each from a byte boundary, without ends of line. Source: TIFF 6.0, section 10. */
export function modifiedHuffman(whole: Picture): Buffer {
  const out = new BitWriter()
  for (const line of blackLines(whole)) {
    writeRuns(out, line)
    out.align()
  }
  return out.bytes()
}

/** Group 3, each line after an end-of-line code; `ended`: six of them at the end. Source: ITU-T T.4, 4.1. */
export function group3(whole: Picture, ended = false): Buffer {
  const out = new BitWriter()
  for (const line of blackLines(whole)) {
    out.code(END_OF_LINE)
    writeRuns(out, line)
  }
  if (ended) out.code(END_OF_LINE.repeat(6))
  return out.bytes()
}

/** Group 3 with lines coded two-dimensionally: one line of each four by itself. Source: ITU-T T.4, 4.2. */
export function group3TwoDimensional(whole: Picture): Buffer {
  const out = new BitWriter()
  const lines = blackLines(whole)
  for (const [y, line] of lines.entries()) {
    const above = lines[y - 1]
    const alone = above === undefined || y % 4 === 0
    out.code(`${END_OF_LINE}${alone ? '1' : '0'}`)
    if (alone) writeRuns(out, line)
    else writeAgainst(out, line, above)
  }
  return out.bytes()
}
