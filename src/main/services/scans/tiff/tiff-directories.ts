import type { FileHandle } from 'node:fs/promises'
import { open } from 'node:fs/promises'
import { type Density, soundDensity } from '../page/density.ts'

/** What matters of one directory, which is one page, of a TIFF file. */
export interface TiffDirectory {
  density?: Density
  orientation?: number
  compression?: number
  /** Whether the colours lie in planes of their own. */
  planesApart: boolean
  tiled: boolean
  samples: number
  /** Whether it has fewer strips than its height needs. */
  cutShort: boolean
  /** What it is of another page of the file, where it is no page of its own. */
  partOf?: 'reduced copy' | 'mask'
}

const NEW_SUBFILE_TYPE = 254
const SUBFILE_TYPE = 255
const HEIGHT = 257
const COMPRESSION = 259
const ORIENTATION = 274
const SAMPLES = 277
const ROWS_PER_STRIP = 278
const STRIP_BYTES = 279
const X_RESOLUTION = 282
const Y_RESOLUTION = 283
const PLANAR = 284
const RESOLUTION_UNIT = 296
const TILE_WIDTH = 322
const WANTED = new Set([
  NEW_SUBFILE_TYPE,
  SUBFILE_TYPE,
  HEIGHT,
  ROWS_PER_STRIP,
  COMPRESSION,
  ORIENTATION,
  SAMPLES,
  X_RESOLUTION,
  Y_RESOLUTION,
  PLANAR,
  RESOLUTION_UNIT,
  TILE_WIDTH,
])

const SHORT = 3
const LONG = 4
const RATIONAL = 5
const CENTIMETRES_PER_INCH = 2.54
const MOST_ENTRIES = 4096

/**
 * The directories of a TIFF or BigTIFF file, in order, as far as they can be followed.
 * @param most directories that are read
 * Source: TIFF 6.0, sections 2 and 8; BigTIFF: libtiff's description of it.
 */
export async function tiffDirectories(path: string, most: number): Promise<TiffDirectory[]> {
  const file = await open(path)
  try {
    return await follow(file, most)
  } finally {
    await file.close()
  }
}

async function follow(file: FileHandle, most: number): Promise<TiffDirectory[]> {
  const found: TiffDirectory[] = []
  const seen = new Set<number>()
  try {
    const head = await bytesAt(file, 0, 16)
    const reader = { file, little: head.toString('latin1', 0, 2) === 'II', big: false }
    reader.big = u16(head, 0 + 2, reader.little) === 43
    let at = reader.big ? u64(head, 8, reader.little) : u32(head, 4, reader.little)
    while (at !== 0 && !seen.has(at) && found.length < most) {
      seen.add(at)
      const { directory, next } = await directoryAt(reader, at)
      found.push(directory)
      at = next
    }
  } catch {
    // Whatever points out of the file ends the list; whoever decodes the page will tell.
  }
  return found
}

interface Reader {
  file: FileHandle
  little: boolean
  big: boolean
}

async function directoryAt(reader: Reader, at: number): Promise<{ directory: TiffDirectory; next: number }> {
  const { file, little, big } = reader
  const countBytes = big ? 8 : 2
  const entryBytes = big ? 20 : 12
  const countAt = await bytesAt(file, at, countBytes)
  const count = big ? u64(countAt, 0, little) : u16(countAt, 0, little)
  if (count > MOST_ENTRIES) throw new RangeError('too many entries')
  const bytes = await bytesAt(file, at + countBytes, count * entryBytes + (big ? 8 : 4))
  const values = new Map<number, number>()
  for (let i = 0; i < count; i++) {
    const entry = bytes.subarray(i * entryBytes, (i + 1) * entryBytes)
    const tag = u16(entry, 0, little)
    if (tag === STRIP_BYTES) values.set(tag, big ? u64(entry, 4, little) : u32(entry, 4, little))
    if (!WANTED.has(tag)) continue
    const value = await readValue(reader, entry).catch(() => undefined)
    if (value !== undefined) values.set(tag, value)
  }
  const next = count * entryBytes
  return { directory: describe(values), next: big ? u64(bytes, next, little) : u32(bytes, next, little) }
}

async function readValue({ file, little, big }: Reader, entry: Buffer): Promise<number | undefined> {
  const type = u16(entry, 2, little)
  const valueAt = big ? 12 : 8
  if (type === SHORT) return u16(entry, valueAt, little)
  if (type === LONG) return u32(entry, valueAt, little)
  if (type !== RATIONAL) return undefined
  const ratio = big ? entry.subarray(valueAt) : await bytesAt(file, u32(entry, valueAt, little), 8)
  return u32(ratio, 0, little) / u32(ratio, 4, little)
}

function describe(values: ReadonlyMap<number, number>): TiffDirectory {
  const density = densityOf(values)
  const orientation = values.get(ORIENTATION)
  const compression = values.get(COMPRESSION)
  const partOf = partOfAnother(values)
  return {
    ...(density === undefined ? {} : { density }),
    ...(orientation === undefined ? {} : { orientation }),
    ...(compression === undefined ? {} : { compression }),
    planesApart: values.get(PLANAR) === 2,
    tiled: values.has(TILE_WIDTH),
    samples: values.get(SAMPLES) ?? 1,
    cutShort: isCutShort(values),
    ...(partOf === undefined ? {} : { partOf }),
  }
}

/** Flags of NewSubfileType, and the value of the older SubfileType that says the first of them. TIFF 6.0, section 8. */
const REDUCED_FLAG = 1
const MASK_FLAG = 4
const REDUCED = 2

function partOfAnother(values: ReadonlyMap<number, number>): TiffDirectory['partOf'] {
  const flags = values.get(NEW_SUBFILE_TYPE)
  if (flags === undefined) return values.get(SUBFILE_TYPE) === REDUCED ? 'reduced copy' : undefined
  if ((flags & MASK_FLAG) !== 0) return 'mask'
  return (flags & REDUCED_FLAG) !== 0 ? 'reduced copy' : undefined
}

/** Of strips, the count is kept. One that says it is far taller than it is would be read for minutes. */
function isCutShort(values: ReadonlyMap<number, number>): boolean {
  const strips = values.get(STRIP_BYTES)
  const height = values.get(HEIGHT)
  const rows = values.get(ROWS_PER_STRIP) ?? height
  if (strips === undefined || height === undefined || rows === undefined || rows === 0) return false
  const planes = values.get(PLANAR) === 2 ? (values.get(SAMPLES) ?? 1) : 1
  return strips < Math.ceil(height / Math.min(rows, height)) * planes
}

/** Unit 1 says that the numbers are an aspect ratio only; without a unit it is inches. */
function densityOf(values: ReadonlyMap<number, number>): Density | undefined {
  const x = values.get(X_RESOLUTION)
  const y = values.get(Y_RESOLUTION) ?? x
  const unit = values.get(RESOLUTION_UNIT) ?? 2
  if (x === undefined || y === undefined || (unit !== 2 && unit !== 3)) return undefined
  const scale = unit === 3 ? CENTIMETRES_PER_INCH : 1
  return soundDensity(x * scale, y * scale)
}

async function bytesAt(file: FileHandle, at: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, at)
  if (bytesRead < length) throw new RangeError('out of the file')
  return buffer
}

const u16 = (bytes: Buffer, at: number, little: boolean): number =>
  little ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at)
const u32 = (bytes: Buffer, at: number, little: boolean): number =>
  little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at)
const u64 = (bytes: Buffer, at: number, little: boolean): number =>
  Number(little ? bytes.readBigUInt64LE(at) : bytes.readBigUInt64BE(at))
