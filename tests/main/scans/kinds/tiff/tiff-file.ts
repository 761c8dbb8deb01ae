import { deflateSync } from 'node:zlib'
import { group3, group3TwoDimensional, modifiedHuffman } from '../ccitt/group-3.ts'
import { group4 } from '../ccitt/group-4.ts'
import { type Picture, packedRows, partOf } from '../picture.ts'
import { directory, type Field, Order, TAG } from './fields.ts'
import { lzw } from './lzw.ts'
import { packBits } from './pack-bits.ts'
import { differences } from './predictor.ts'

export type Compression =
  | 'none'
  | 'modified huffman'
  | 'group 3'
  | 'group 3, 2-D'
  | 'group 4'
  | 'lzw'
  | 'jpeg'
  | 'deflate'
  | 'packbits'

const CODES: Record<Compression, number> = {
  none: 1,
  'modified huffman': 2,
  'group 3': 3,
  'group 3, 2-D': 3,
  'group 4': 4,
  lzw: 5,
  jpeg: 7,
  deflate: 8,
  packbits: 32773,
}

export type Photometric = 'white is zero' | 'black is zero' | 'rgb' | 'palette' | 'inks' | 'ycbcr'
const PHOTOMETRIC: Record<Photometric, number> = {
  'white is zero': 0,
  'black is zero': 1,
  rgb: 2,
  palette: 3,
  inks: 5,
  ycbcr: 6,
}

/** A page of a TIFF file, and how it is to be written. */
export interface TiffPage {
  /** Samples as the file is to hold them. Bitonal compressions code 0 as black. */
  picture: Picture
  photometric: Photometric
  compression?: Compression
  /** Rows of a strip; or sides of a tile, multiples of 16. */
  rows?: number
  tile?: readonly [width: number, height: number]
  predictor?: boolean
  /** Samples of each kind by themselves. */
  planar?: boolean
  /** Pixels per unit along and across, and the unit. */
  resolution?: { x: number; y: number; unit: 'inch' | 'cm' }
  orientation?: number
  /** NewSubfileType: 1 a reduced copy, 2 a page of several, 4 a mask. Or the older SubfileType. */
  subfile?: number
  oldSubfile?: number
  colours?: readonly (readonly [number, number, number])[]
  icc?: Buffer
  /** JPEG streams of the strips or tiles, in order, for `jpeg`. */
  streams?: readonly Buffer[]
}

function compressed(part: Picture, page: TiffPage, order: Order): Buffer {
  const { compression = 'none', predictor = false } = page
  switch (compression) {
    case 'modified huffman':
      return modifiedHuffman(part)
    case 'group 3':
      return group3(part)
    case 'group 3, 2-D':
      return group3TwoDimensional(part)
    case 'group 4':
      return group4(part)
    default: {
      const rows = packedRows(predictor ? differences(part) : part, order.little)
      if (compression === 'packbits') return Buffer.concat(rows.map(packBits))
      const bytes = Buffer.concat(rows)
      return compression === 'lzw' ? lzw(bytes) : compression === 'deflate' ? deflateSync(bytes) : bytes
    }
  }
}

const bandOf = (whole: Picture, band: number): Picture => ({
  ...whole,
  samples: 1,
  values: whole.values.filter((_, i) => i % whole.samples === band),
})

/** The strips or tiles of a page, row by row, of each kind of sample in turn where they are apart. */
export function partsOf({ picture, rows = picture.height, tile, planar = false }: TiffPage): Picture[] {
  const { width, height, samples } = picture
  const planes = planar ? Array.from({ length: samples }, (_, band) => bandOf(picture, band)) : [picture]
  const [across, down] = tile ?? [width, rows]
  return planes.flatMap((plane) => {
    const parts: Picture[] = []
    for (let top = 0; top < height; top += down) {
      const tall = tile === undefined ? Math.min(down, height - top) : down
      for (let left = 0; left < width; left += across) parts.push(partOf(plane, left, top, across, tall))
    }
    return parts
  })
}

function fieldsOf(page: TiffPage, offsets: number[], counts: number[]): Field[] {
  const { picture, compression = 'none', photometric, tile, resolution, orientation, colours, icc } = page
  const short = (tag: number, ...values: number[]): Field => ({ tag, type: 'short', values })
  const long = (tag: number, ...values: number[]): Field => ({ tag, type: 'long', values })
  const fields = [
    long(TAG.width, picture.width),
    long(TAG.height, picture.height),
    short(TAG.bits, ...new Array<number>(picture.samples).fill(picture.bits)),
    short(TAG.compression, CODES[compression]),
    short(TAG.photometric, PHOTOMETRIC[photometric]),
    short(TAG.samples, picture.samples),
    short(TAG.planar, page.planar === true ? 2 : 1),
  ]
  if (tile === undefined) {
    fields.push(long(TAG.rowsPerStrip, page.rows ?? picture.height))
    fields.push(long(TAG.stripOffsets, ...offsets), long(TAG.stripByteCounts, ...counts))
  } else {
    fields.push(short(TAG.tileWidth, tile[0]), short(TAG.tileHeight, tile[1]))
    fields.push(long(TAG.tileOffsets, ...offsets), long(TAG.tileByteCounts, ...counts))
  }
  if (resolution !== undefined) {
    const fraction = (tag: number, value: number): Field => ({
      tag,
      type: 'rational',
      values: [[Math.round(value * 1000), 1000]],
    })
    fields.push(fraction(TAG.xResolution, resolution.x), fraction(TAG.yResolution, resolution.y))
    fields.push(short(TAG.resolutionUnit, resolution.unit === 'inch' ? 2 : 3))
  }
  if (compression === 'group 3, 2-D') fields.push(long(TAG.t4Options, 1))
  if (page.predictor === true) fields.push(short(TAG.predictor, 2))
  if (orientation !== undefined) fields.push(short(TAG.orientation, orientation))
  if (page.subfile !== undefined) fields.push(long(TAG.newSubfileType, page.subfile))
  if (page.oldSubfile !== undefined) fields.push(short(TAG.subfileType, page.oldSubfile))
  if (photometric === 'inks') fields.push(short(TAG.inkSet, 1))
  if (photometric === 'ycbcr') fields.push(short(TAG.yCbCrSubSampling, 1, 1))
  if (icc !== undefined) fields.push({ tag: TAG.iccProfile, type: 'bytes', values: icc })
  if (colours !== undefined) {
    const map = [0, 1, 2].flatMap((band) =>
      Array.from({ length: 2 ** picture.bits }, (_, i) => (colours[i]?.[band] ?? 0) * 257),
    )
    fields.push(short(TAG.colourMap, ...map))
  }
  return fields
}

/** A TIFF file of some pages. Source: TIFF 6.0. */
export function tiffFile(pages: readonly TiffPage[], mark: 'II' | 'MM' = 'II'): Buffer {
  const order = new Order(mark)
  const parts: Buffer[] = [Buffer.from(mark, 'latin1'), order.short(42)]
  let at = 8
  const pieces: Buffer[] = []
  let firstDirectory = 0
  for (const [number, page] of pages.entries()) {
    const data = page.streams ?? partsOf(page).map((part) => compressed(part, page, order))
    const even = data.map((bytes) =>
      bytes.length % 2 === 0 ? bytes : Buffer.concat([bytes, Buffer.alloc(1)]),
    )
    // A directory lies before its own data, whose places depend on its length: that does not depend on them.
    const counts = data.map(({ length }) => length)
    const draft = directory(fieldsOf(page, counts, counts), at, order, () => 0)
    let place = at + draft.length
    const offsets = even.map(({ length }) => {
      place += length
      return place - length
    })
    const last = number === pages.length - 1
    const end = place
    pieces.push(
      directory(fieldsOf(page, offsets, counts), at, order, () => (last ? 0 : end)),
      ...even,
    )
    if (number === 0) firstDirectory = at
    at = end
  }
  return Buffer.concat([...parts, order.long(firstDirectory), ...pieces])
}
