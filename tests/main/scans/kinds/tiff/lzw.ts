import { BitWriter } from '../bit-writer.ts'

const CLEAR = 256
const END = 257
const FIRST_FREE = 258
const FULL = 4093

/**
 * Compresses bytes by Lempel, Ziv and Welch's method as TIFF has it: codes of 9 to 12 bits, the most significant bit
 * first, each width left one code early. Source: TIFF 6.0, section 13.
 */
export function lzw(bytes: Buffer): Buffer {
  const out = new BitWriter()
  let table = new Map<string, number>()
  let next = FIRST_FREE
  const width = (): number => (next < 512 ? 9 : next < 1024 ? 10 : next < 2048 ? 11 : 12)
  const code = (text: string): number => (text.length === 1 ? text.charCodeAt(0) : (table.get(text) ?? 0))
  out.number(CLEAR, 9)
  let known = ''
  for (const byte of bytes) {
    const longer = known + String.fromCharCode(byte)
    if (longer.length === 1 || table.has(longer)) {
      known = longer
      continue
    }
    out.number(code(known), width())
    table.set(longer, next)
    next += 1
    if (next > FULL) {
      out.number(CLEAR, 12)
      table = new Map()
      next = FIRST_FREE
    }
    known = String.fromCharCode(byte)
  }
  if (known !== '') {
    out.number(code(known), width())
    next += 1
  }
  out.number(END, width())
  return out.bytes()
}
