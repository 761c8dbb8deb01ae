import { crc32, deflateSync } from 'node:zlib'
import { type Picture, packedRows } from '../picture.ts'

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])

/** A chunk with its length and check. Source: PNG (ISO/IEC 15948), 5.3. */
export function pngChunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(named))
  return Buffer.concat([length, named, check])
}

export interface PngOptions {
  colours?: readonly (readonly [number, number, number])[]
  /** Pixels per metre along and across. */
  perMetre?: readonly [number, number]
}

/** Colour types by samples. Source: PNG, table 11.1. */
const COLOUR_TYPES = { 1: 0, 2: 4, 3: 2, 4: 6 } as const
const PALETTE = 3

/** A PNG file whose rows are not filtered. Source: PNG (ISO/IEC 15948). */
export function pngFile(picture: Picture, { colours, perMetre }: PngOptions = {}): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(picture.width, 0)
  header.writeUInt32BE(picture.height, 4)
  header.writeUInt8(picture.bits, 8)
  header.writeUInt8(colours === undefined ? COLOUR_TYPES[picture.samples] : PALETTE, 9)
  const chunks = [pngChunk('IHDR', header)]
  if (perMetre !== undefined) {
    const density = Buffer.alloc(9)
    density.writeUInt32BE(perMetre[0], 0)
    density.writeUInt32BE(perMetre[1], 4)
    density.writeUInt8(1, 8)
    chunks.push(pngChunk('pHYs', density))
  }
  if (colours !== undefined) chunks.push(pngChunk('PLTE', Buffer.from(colours.flat())))
  const rows = packedRows(picture).flatMap((row) => [Buffer.alloc(1), row])
  chunks.push(pngChunk('IDAT', deflateSync(Buffer.concat(rows))), pngChunk('IEND', Buffer.alloc(0)))
  return Buffer.concat([SIGNATURE, ...chunks])
}
