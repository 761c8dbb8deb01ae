import { BitWriter } from '../bit-writer.ts'
import { END_OF_LINE } from './codes.ts'
import { writeAgainst } from './lines.ts'

const PERIOD = 64
const BAR = 5
const WAVE = 20

/** How far the bars of a row stand to the right: 0 to 20 and back, a pixel each row. */
const shiftOf = (y: number): number => {
  const at = y % (2 * WAVE)
  return at <= WAVE ? at : 2 * WAVE - at
}

/** Whether a pixel of the picture is black. */
export function isBar(x: number, y: number, width: number): boolean {
  const along = x - shiftOf(y)
  return along >= 0 && along % PERIOD < BAR && along - (along % PERIOD) < width - PERIOD
}

/**
 * Upright bars that waver, coded by Group 4: any size, quickly, as each row is the one above moved by a pixel. Source:
 * ITU-T T.6, 2.2: vertical mode, one to the right or left.
 */
export function waveringBars(width: number, height: number): Buffer {
  const first = Array.from({ length: width }, (_, x) => isBar(x, 0, width))
  const changes = first.filter((black, x) => black !== (first[x - 1] ?? false)).length
  const out = new BitWriter()
  writeAgainst(out, first, new Array<boolean>(width).fill(false))
  const [right, left] = [`${'011'.repeat(changes)}1`, `${'010'.repeat(changes)}1`]
  for (let y = 1; y < height; y++) out.code(shiftOf(y) > shiftOf(y - 1) ? right : left)
  out.code(END_OF_LINE + END_OF_LINE)
  return out.bytes()
}
