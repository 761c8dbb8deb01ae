import type { FileHandle } from 'node:fs/promises'
import { open } from 'node:fs/promises'
import { type Density, soundDensity } from '../page/density.ts'
import { TAG } from './fields.ts'
import { firstValue, readDirectories, type TiffField } from './read-directories.ts'

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

const WANTED: ReadonlySet<number> = new Set([
  TAG.newSubfileType,
  TAG.subfileType,
  TAG.height,
  TAG.rowsPerStrip,
  TAG.compression,
  TAG.orientation,
  TAG.samples,
  TAG.xResolution,
  TAG.yResolution,
  TAG.planar,
  TAG.resolutionUnit,
  TAG.tileWidth,
])

const CENTIMETRES_PER_INCH = 2.54

/**
 * What the directories of a TIFF or BigTIFF file say, in order, as far as they can be followed.
 * @param most directories that are read
 * Source: TIFF 6.0, section 8.
 */
export async function tiffDirectories(path: string, most: number): Promise<TiffDirectory[]> {
  const file = await open(path)
  const found: TiffDirectory[] = []
  try {
    for await (const fields of readDirectories((at, length) => bytesAt(file, at, length))) {
      found.push(describe(await valuesOf(fields)))
      if (found.length >= most) break
    }
  } catch {
    // Whatever points out of the file ends the list; whoever decodes the page will tell.
  } finally {
    await file.close()
  }
  return found
}

/** The first value of each field that matters; of strips, the count. */
async function valuesOf(fields: readonly TiffField[]): Promise<ReadonlyMap<number, number>> {
  const values = new Map<number, number>()
  for (const field of fields) {
    if (field.tag === TAG.stripBytes) values.set(field.tag, field.count)
    if (!WANTED.has(field.tag)) continue
    const value = await firstValue(field)
    if (value !== undefined) values.set(field.tag, value)
  }
  return values
}

function describe(values: ReadonlyMap<number, number>): TiffDirectory {
  const density = densityOf(values)
  const orientation = values.get(TAG.orientation)
  const compression = values.get(TAG.compression)
  const partOf = partOfAnother(values)
  return {
    ...(density === undefined ? {} : { density }),
    ...(orientation === undefined ? {} : { orientation }),
    ...(compression === undefined ? {} : { compression }),
    planesApart: values.get(TAG.planar) === 2,
    tiled: values.has(TAG.tileWidth),
    samples: values.get(TAG.samples) ?? 1,
    cutShort: isCutShort(values),
    ...(partOf === undefined ? {} : { partOf }),
  }
}

/** Flags of NewSubfileType, and the value of the older SubfileType that says the first of them. TIFF 6.0, section 8. */
const REDUCED_FLAG = 1
const MASK_FLAG = 4
const REDUCED = 2

function partOfAnother(values: ReadonlyMap<number, number>): TiffDirectory['partOf'] {
  const flags = values.get(TAG.newSubfileType)
  if (flags === undefined) return values.get(TAG.subfileType) === REDUCED ? 'reduced copy' : undefined
  if ((flags & MASK_FLAG) !== 0) return 'mask'
  return (flags & REDUCED_FLAG) !== 0 ? 'reduced copy' : undefined
}

/** One that says it is far taller than it is would be read for minutes. */
function isCutShort(values: ReadonlyMap<number, number>): boolean {
  const strips = values.get(TAG.stripBytes)
  const height = values.get(TAG.height)
  const rows = values.get(TAG.rowsPerStrip) ?? height
  if (strips === undefined || height === undefined || rows === undefined || rows === 0) return false
  const planes = values.get(TAG.planar) === 2 ? (values.get(TAG.samples) ?? 1) : 1
  return strips < Math.ceil(height / Math.min(rows, height)) * planes
}

/** Unit 1 says that the numbers are an aspect ratio only; without a unit it is inches. */
function densityOf(values: ReadonlyMap<number, number>): Density | undefined {
  const x = values.get(TAG.xResolution)
  const y = values.get(TAG.yResolution) ?? x
  const unit = values.get(TAG.resolutionUnit) ?? 2
  if (x === undefined || y === undefined || (unit !== 2 && unit !== 3)) return undefined
  const scale = unit === 3 ? CENTIMETRES_PER_INCH : 1
  return soundDensity(x * scale, y * scale)
}

async function bytesAt(file: FileHandle, at: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, at)
  if (bytesRead < length) throw new RangeError('out of the file')
  return buffer
}
