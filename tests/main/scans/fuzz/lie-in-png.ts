import { crc32 } from 'node:zlib'
import { type Chance, lie } from './chance.ts'

interface Chunk {
  at: number
  length: number
}

function chunksOf(file: Buffer): Chunk[] {
  const chunks: Chunk[] = []
  for (let at = 8; at + 12 <= file.length; ) {
    const length = file.readUInt32BE(at)
    chunks.push({ at, length })
    at += length + 12
  }
  return chunks
}

/** A chunk of a PNG file says what is not so, of its size or in its data, and its check is right all the same. */
export function lieInPng(whole: Buffer, chance: Chance): Buffer {
  const file = Buffer.from(whole)
  const chunks = chunksOf(whole)
  const first = chunks[0]
  const chunk = chance.whole(0, 1) === 0 ? first : chance.of(chunks)
  if (chunk === undefined || first === undefined) return file
  const { at, length } = chunk
  if (chunk === first) {
    const field = chance.whole(0, 6)
    if (field < 2)
      file.writeUInt32BE(lie(chance, file.readUInt32BE(at + 8 + 4 * field), 4), at + 8 + 4 * field)
    else file.writeUInt8(lie(chance, file.readUInt8(at + 14 + field), 1), at + 14 + field)
  } else if (chance.whole(0, 1) === 0) {
    const told = lie(chance, length, 4)
    file.writeUInt32BE(told, at)
    const end = Math.min(at + 8 + told, file.length - 4)
    file.writeUInt32BE(crc32(file.subarray(at + 4, end)), end)
    return file
  } else if (length > 0) {
    file.writeUInt8(chance.whole(0, 255), at + 8 + chance.whole(0, length - 1))
  }
  file.writeUInt32BE(crc32(file.subarray(at + 4, at + 8 + length)), at + 8 + length)
  return file
}
