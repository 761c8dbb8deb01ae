import { type Chance, lie } from './chance.ts'

/** Sizes of a WebP file that are not so: of the file, of its first chunk, or of the picture. Source: RFC 9649. */
export function lieInWebp(whole: Buffer, chance: Chance): Buffer {
  const file = Buffer.from(whole)
  const what = chance.whole(0, 3)
  if (what === 0) file.writeUInt32LE(lie(chance, file.readUInt32LE(4), 4), 4)
  else if (what === 1) file.writeUInt32LE(lie(chance, file.readUInt32LE(16), 4), 16)
  else {
    // The picture's size stands in the first bytes of the code, elsewhere for each way of coding.
    const at = 20 + chance.whole(0, 12)
    file.writeUInt16LE(lie(chance, file.readUInt16LE(at), 2), at)
  }
  return file
}
