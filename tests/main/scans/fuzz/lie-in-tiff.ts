import { type Chance, lie } from './chance.ts'
import { flipHead } from './spoil-bytes.ts'

/** Where the directories lie, and the bytes of each field's entry. */
function entriesOf(file: Buffer): { entries: number[]; nexts: number[]; little: boolean } {
  const little = file.toString('latin1', 0, 2) === 'II'
  const short = (at: number): number => (little ? file.readUInt16LE(at) : file.readUInt16BE(at))
  const long = (at: number): number => (little ? file.readUInt32LE(at) : file.readUInt32BE(at))
  const entries: number[] = []
  const nexts: number[] = [4]
  for (let at = long(4); at !== 0; ) {
    const count = short(at)
    for (let i = 0; i < count; i++) entries.push(at + 2 + 12 * i)
    const next = at + 2 + 12 * count
    nexts.push(next)
    at = long(next)
  }
  return { entries, nexts, little }
}

/** A field of a TIFF file says what is not so: its value, count or type, or where the next page is. */
export function lieInTiff(whole: Buffer, chance: Chance): Buffer {
  const file = Buffer.from(whole)
  // Directories with places of eight bytes are laid out otherwise.
  if (file[2] === 43 || file[3] === 43) return flipHead(whole, chance)
  const { entries, nexts, little } = entriesOf(whole)
  const long = (at: number): number => (little ? file.readUInt32LE(at) : file.readUInt32BE(at))
  const setLong = (at: number, value: number): void => {
    if (little) file.writeUInt32LE(value >>> 0, at)
    else file.writeUInt32BE(value >>> 0, at)
  }
  for (let count = chance.whole(1, 2); count > 0; count--) {
    const entry = chance.of(entries) ?? 8
    const what = chance.whole(0, 9)
    if (what < 6) setLong(entry + 8, lie(chance, long(entry + 8), 4))
    else if (what < 8) setLong(entry + 4, lie(chance, long(entry + 4), 4))
    else if (what === 8) file[entry + 2 + (little ? 0 : 1)] = chance.whole(0, 18)
    else
      setLong(chance.of(nexts) ?? 4, chance.of([8, 4, whole.length - 3, chance.whole(0, whole.length)]) ?? 0)
  }
  return file
}
