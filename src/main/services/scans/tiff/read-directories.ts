import { TYPE } from './fields.ts'

/** Bytes of a file from a place on. @throws RangeError when it ends before */
export type BytesAt = (at: number, length: number) => Promise<Buffer>

/** One field of a directory. */
export interface TiffField {
  tag: number
  type: number
  /** How many values it has. */
  count: number
  /** The first of its values, read as such. */
  short: () => number
  long: () => number
  /** @throws RangeError when it lies outside the file */
  ratio: () => Promise<number>
}

const MOST_ENTRIES = 4096

/** Where things lie in a directory; of BigTIFF with room for more. */
const CLASSIC = { start: 4, count: 2, entry: 12, value: 8, next: 4 }
const BIG = { start: 8, count: 8, entry: 20, value: 12, next: 8 }
const BIG_VERSION = 43

/**
 * The directories of a TIFF or BigTIFF file, in order. Each is one page; a ring of them ends where it began.
 * @throws RangeError when one points out of the file, or has more fields than any
 * Source: TIFF 6.0, section 2; BigTIFF: libtiff's description of it.
 */
export async function* readDirectories(bytesAt: BytesAt): AsyncGenerator<TiffField[]> {
  const head = await bytesAt(0, 8)
  const numbers = numbersOf(head.toString('latin1', 0, 2) === 'II')
  const form = numbers.u16(head, 2) === BIG_VERSION ? BIG : CLASSIC
  const offset = form === BIG ? numbers.u64 : numbers.u32
  const seen = new Set<number>()
  let at = offset(await bytesAt(form.start, form.next), 0)
  while (at !== 0 && !seen.has(at)) {
    seen.add(at)
    const counted = await bytesAt(at, form.count)
    const count = form === BIG ? numbers.u64(counted, 0) : numbers.u16(counted, 0)
    if (count > MOST_ENTRIES) throw new RangeError('too many entries')
    const entries = await bytesAt(at + form.count, count * form.entry)
    yield Array.from({ length: count }, (_, i) =>
      fieldOf(entries.subarray(i * form.entry, (i + 1) * form.entry), form, numbers, bytesAt),
    )
    at = offset(await bytesAt(at + form.count + entries.length, form.next), 0)
  }
}

type Numbers = ReturnType<typeof numbersOf>

/** How numbers lie in a file: the least significant byte first, or the most. */
const numbersOf = (little: boolean) => ({
  u16: (bytes: Buffer, at: number): number => (little ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at)),
  u32: (bytes: Buffer, at: number): number => (little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at)),
  u64: (bytes: Buffer, at: number): number =>
    Number(little ? bytes.readBigUInt64LE(at) : bytes.readBigUInt64BE(at)),
})

function fieldOf(
  entry: Buffer,
  { value }: typeof CLASSIC,
  { u16, u32, u64 }: Numbers,
  bytesAt: BytesAt,
): TiffField {
  const isBig = value === BIG.value
  return {
    tag: u16(entry, 0),
    type: u16(entry, 2),
    count: isBig ? u64(entry, 4) : u32(entry, 4),
    short: () => u16(entry, value),
    long: () => u32(entry, value),
    ratio: async () => {
      // A fraction has 8 bytes, which stand in the entry itself where there is room.
      const at = isBig ? entry.subarray(value) : await bytesAt(u32(entry, value), 8)
      return u32(at, 0) / u32(at, 4)
    },
  }
}

/** The first value of a field, by its type; undefined when it is none that is a number here. */
export async function firstValue({ type, short, long, ratio }: TiffField): Promise<number | undefined> {
  if (type === TYPE.short) return short()
  if (type === TYPE.long) return long()
  return type === TYPE.rational ? ratio().catch(() => undefined) : undefined
}
