/** Kinds of segments. ITU-T T.88, 7.3. */
const KINDS = new Set([0, 4, 6, 7, 16, 20, 22, 23, 36, 38, 39, 40, 42, 43, 48, 49, 50, 51, 52, 53, 62])

/** A length that is found by decoding only. ITU-T T.88, 7.2.7. */
const UNKNOWN = 0xffffffff

interface Segment {
  number: number
  kind: number
  /** Where its data begins, and bytes of it. */
  at: number
  length: number
}

/**
 * Whether all segments of a picture coded by JBIG2 are as long as they say. What was cut off between two segments can't
 * be told: a PDF need not say where a picture ends.
 * @param coded as a PDF has it, without the header of a file
 * Source: ISO 32000-1, 7.4.7; ITU-T T.88, 7.2.
 */
export function jbig2IsWhole(coded: Buffer): boolean {
  let [from, before] = [0, -1]
  while (from < coded.length) {
    const segment = segmentAt(coded, from)
    if (segment === undefined) return before >= 0
    const { number, kind, at, length } = segment
    // What follows the last segment and is none does no harm.
    if (number <= before || !KINDS.has(kind)) return before >= 0
    if (length === UNKNOWN) return true
    if (at + length > coded.length) return false
    from = at + length
    before = number
  }
  return before >= 0
}

/** The header of a segment; undefined when it reaches out of the data. */
function segmentAt(coded: Buffer, from: number): Segment | undefined {
  if (from + 6 > coded.length) return undefined
  const number = coded.readUInt32BE(from)
  const flags = coded.readUInt8(from + 4)
  const few = coded.readUInt8(from + 5) >> 5
  let [count, at] = [few, from + 6]
  if (few === 7) {
    if (from + 9 > coded.length) return undefined
    count = coded.readUInt32BE(from + 5) & 0x1fffffff
    at = from + 9 + Math.ceil((count + 1) / 8)
  }
  at += count * (number <= 256 ? 1 : number <= 65536 ? 2 : 4) + ((flags & 0x40) === 0 ? 1 : 4)
  if (at + 4 > coded.length) return undefined
  return { number, kind: flags & 0x3f, at: at + 4, length: coded.readUInt32BE(at) }
}
