import type { BitWriter } from '../bit-writer.ts'
import type { Picture } from '../picture.ts'
import { runCodes } from './codes.ts'

/** A line of pixels, true where it is black. */
export type Line = readonly boolean[]

export const blackLines = ({ width, height, values }: Picture): Line[] =>
  Array.from({ length: height }, (_, y) =>
    Array.from({ length: width }, (_, x) => values[y * width + x] === 0),
  )

/** The first place after `from` where the colour of a line changes to the opposite of `colour`; else its end. */
const nextOf = (line: Line, from: number, colour: boolean): number => {
  let at = from
  while (at < line.length && line[at] === colour) at += 1
  return at
}

/** One-dimensional coding: runs of white and black in turn, beginning with white. Source: ITU-T T.4, 4.1. */
export function writeRuns(out: BitWriter, line: Line): void {
  let black = false
  for (let at = 0; at < line.length; black = !black) {
    const end = nextOf(line, at, black)
    out.code(runCodes(end - at, black))
    at = end
  }
}

/** The first changing element of `line` to the right of `a0` and of the colour opposite to `colour`. */
function b1Of(line: Line, a0: number, colour: boolean): number {
  for (let at = a0 + 1; at < line.length; at++) {
    const before = at === 0 ? false : (line[at - 1] ?? false)
    if (line[at] !== before && line[at] !== colour) return at
  }
  return line.length
}

const VERTICAL = new Map([
  [0, '1'],
  [1, '011'],
  [2, '000011'],
  [3, '0000011'],
  [-1, '010'],
  [-2, '000010'],
  [-3, '0000010'],
])

/** Two-dimensional coding of a line against the one above. Source: ITU-T T.4, 4.2; T.6, 2.2. */
export function writeAgainst(out: BitWriter, line: Line, above: Line): void {
  const end = line.length
  let a0 = -1
  let colour = false
  while (a0 < end) {
    const a1 = nextOf(line, Math.max(a0, 0), colour)
    const b1 = b1Of(above, a0, colour)
    const b2 = nextOf(above, b1, above[b1] ?? colour)
    const vertical = VERTICAL.get(a1 - b1)
    if (b2 < a1) {
      out.code('0001')
      a0 = b2
    } else if (vertical !== undefined) {
      out.code(vertical)
      a0 = a1
      colour = !colour
    } else {
      const a2 = nextOf(line, a1, !colour)
      out.code(`001${runCodes(a1 - Math.max(a0, 0), colour)}${runCodes(a2 - a1, !colour)}`)
      a0 = a2
    }
  }
}
