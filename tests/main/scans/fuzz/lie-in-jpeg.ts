import { type Chance, lie } from './chance.ts'

const START_OF_SCAN = 0xda

/** Where the segments begin, up to the first scan. */
function segmentsOf(file: Buffer): number[] {
  const segments: number[] = []
  for (let at = 2; at + 4 <= file.length && file[at] === 0xff; at += 2 + file.readUInt16BE(at + 2)) {
    segments.push(at)
    if (file[at + 1] === START_OF_SCAN) break
  }
  return segments
}

const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xc2

/** A segment of a JPEG file says what is not so: its length, or the size of the picture, or anything in it. */
export function lieInJpeg(whole: Buffer, chance: Chance): Buffer {
  const file = Buffer.from(whole)
  const segments = segmentsOf(whole)
  const frame = segments.find((at) => isFrame(whole[at + 1] ?? 0))
  const at = (chance.whole(0, 2) === 0 ? frame : chance.of(segments)) ?? 2
  if (at === frame && chance.whole(0, 2) > 0) {
    const field = at + 5 + 2 * chance.whole(0, 1)
    file.writeUInt16BE(lie(chance, file.readUInt16BE(field), 2), field)
    return file
  }
  const length = file.readUInt16BE(at + 2)
  if (chance.whole(0, 1) === 0) file.writeUInt16BE(lie(chance, length, 2), at + 2)
  else file.writeUInt8(lie(chance, 0, 1), at + 4 + chance.whole(0, Math.max(0, length - 3)))
  return file
}
