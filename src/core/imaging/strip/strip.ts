import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { type GreyPicture, windowsOf } from '../window/grey-picture.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import type { AlongAcross, CurveBasis, ReferenceCurve } from './reference-curve.ts'

const { f64, grey: greyOf } = elements

/**
 * The raw pixels along a curve, cut into pieces. A pixel belongs to the piece in which its centre lies; of it are kept
 * where it lies along (from the middle of its piece) and across, its grey value, and its column and row in the scan.
 */
export interface Strip {
  curve: ReferenceCurve
  pieces: Piece[]
  along: Float64Array
  across: Float64Array
  value: Float64Array
  column: Int32Array
  row: Int32Array
}

export interface Piece {
  /** Along the curve, pixels. */
  from: number
  to: number
  middle: number
  /** Of the curve, at its middle. */
  basis: CurveBasis
  /** Its pixels, by their place in the arrays of the strip: from this one to before that one. */
  first: number
  end: number
  /** The share of its area of which there are pixels: less than 1 where the window ends. */
  covered: number
  /** Mean grey value of its pixels. */
  mean: number
  /** Sums over its pixels of the products of 1, along, across and the grey value less the mean: 4 × 4, upper triangle. */
  products: Float64Array
}

/** Whether there are pixels enough of a piece to tell anything by. */
export const isCovered = ({ covered }: Piece): boolean => covered >= 0.75

/** The number of pieces of a stroke this long. */
export const piecesFor = (length: number, shortest: number): number =>
  Math.max(3, Math.min(64, Math.floor(length / shortest)))

/**
 * So much of the length of a piece tells well enough where a stroke may be, pixels: a way is looked for there, and then traced
 * by all of it. Of long strokes only, for a piece of one of 8,000 px is no longer.
 */
export const SEEN_OF_PIECE = 128

/** Of a row only the part that lies in the piece of a straight strip, to a pixel. */
function rowOf(
  [left, top]: readonly [number, number],
  curve: ReferenceCurve,
  y: number,
  x0: number,
  x1: number,
  [from, to, low, high]: readonly [number, number, number, number],
  at: AlongAcross,
): [number, number] {
  curve.locate(left + x0 + 0.5, top + y + 0.5, at)
  const { along: s, across: t } = at
  curve.locate(left + x0 + 1.5, top + y + 0.5, at)
  const [sa, sb] = spanOf(from - s, to - s, at.along - s)
  const [ta, tb] = spanOf(low - t, high - t, at.across - t)
  return [Math.max(x0, x0 + Math.floor(Math.max(sa, ta))), Math.min(x1, x0 + Math.ceil(Math.min(sb, tb)) + 1)]
}

/** From where to where low ≤ slope·x ≤ high. */
function spanOf(low: number, high: number, slope: number): [number, number] {
  if (Math.abs(slope) < 1e-9) return low <= 1e-6 && high >= -1e-6 ? [-1e6, 1e6] : [1, -1]
  return slope > 0 ? [low / slope, high / slope] : [high / slope, low / slope]
}

/**
 * @param count pieces, of equal length
 * @param low and high: how far it reaches across, pixels
 * @param most of each piece only so much of its length, about its middle, is looked at, pixels
 */
export function stripAlong(
  grey: GreyPicture,
  curve: ReferenceCurve,
  count: number,
  low: number,
  high: number,
  most = Number.POSITIVE_INFINITY,
): Strip {
  const half = Math.max(-low, high)
  const size = curve.length / count
  const seen = Math.min(size, most)
  const room = Math.ceil(seen * count * (high - low) * (1 + half * Math.abs(curve.curvature)) + 60 * count)
  const pixels = scratchFor(room)
  const { along, across, value } = pixels
  const windows = windowsOf(grey)
  const pieces: Piece[] = []
  let n = 0
  for (let k = 0; k < count; k++) {
    const from = k * size
    const to = from + size
    const middle = from + size / 2
    const first = n
    const [begin, end] = seen < size ? [middle - seen / 2, middle + seen / 2] : [from, to]
    const box = curve.box(begin, end, half)
    for (const window of windows) n = addPixels(pixels, n, window, curve, box, [begin, end, low, high])
    const area = seen * (high - low) * (1 - ((low + high) / 2) * curve.curvature)
    const covered = Math.min(1, (n - first) / area)
    const basis = curve.basisAt(middle)
    const sums = productsOf(along, across, value, first, n)
    pieces.push({ from, to, middle, basis, first, end: n, covered, ...sums })
  }
  return { curve, pieces, ...ownPixels(pixels, n) }
}

/**
 * Adds the pixels of a window that lie in a piece of a strip.
 * @param n how many there are already
 * @returns how many there are then
 */
function addPixels(
  { along, across, value, column, row }: Pixels,
  n: number,
  { left, top, width, height, data }: GreyWindow,
  curve: ReferenceCurve,
  box: readonly [left: number, top: number, right: number, bottom: number],
  piece: readonly [from: number, to: number, low: number, high: number],
): number {
  const [from, to, low, high] = piece
  const at: AlongAcross = { along: Number.NaN, across: Number.NaN }
  const middle = (from + to) / 2
  const room = along.length
  const x0 = Math.max(box[0] - left, 0)
  const y0 = Math.max(box[1] - top, 0)
  const x1 = Math.min(box[2] - left, width)
  const y1 = Math.min(box[3] - top, height)
  let count = n
  for (let y = y0; y < y1; y++) {
    const [start, stop] = curve.curvature === 0 ? rowOf([left, top], curve, y, x0, x1, piece, at) : [x0, x1]
    for (let x = start; x < stop; x++) {
      if (!curve.locateWithin(left + x + 0.5, top + y + 0.5, low, high, at)) continue
      const { along: s, across: t } = at
      if (s < from || s >= to || count >= room) continue
      along[count] = s - middle
      across[count] = t
      value[count] = greyOf(data, y * width + x)
      column[count] = left + x
      row[count] = top + y
      count++
    }
  }
  return count
}

function productsOf(
  along: Float64Array,
  across: Float64Array,
  value: Float64Array,
  first: number,
  end: number,
): Pick<Piece, 'mean' | 'products'> {
  let mean = 0
  for (let i = first; i < end; i++) mean += f64(value, i)
  mean /= Math.max(end - first, 1)
  let s1 = 0
  let t1 = 0
  let v1 = 0
  let ss = 0
  let st = 0
  let sv = 0
  let tt = 0
  let tv = 0
  let vv = 0
  for (let i = first; i < end; i++) {
    const s = f64(along, i)
    const t = f64(across, i)
    const v = f64(value, i) - mean
    s1 += s
    t1 += t
    v1 += v
    ss += s * s
    st += s * t
    sv += s * v
    tt += t * t
    tv += t * v
    vv += v * v
  }
  return {
    mean,
    products: Float64Array.of(end - first, s1, t1, v1, 0, ss, st, sv, 0, 0, tt, tv, 0, 0, 0, vv),
  }
}

type Pixels = Pick<Strip, 'along' | 'across' | 'value' | 'column' | 'row'>

const pixelsFor = (room: number): Pixels => ({
  along: new Float64Array(room),
  across: new Float64Array(room),
  value: new Float64Array(room),
  column: new Int32Array(room),
  row: new Int32Array(room),
})

/** Room up to this is kept for the next strip. */
const KEPT_ROOM = 1 << 17
let scratch = pixelsFor(0)

function scratchFor(room: number): Pixels {
  if (scratch.along.length >= room) return scratch
  const larger = pixelsFor(room)
  if (room <= KEPT_ROOM) scratch = larger
  return larger
}

/** The first n of these: copied from the room that is kept for the next strip, or as they are where that is the strip's own. */
function ownPixels(pixels: Pixels, n: number): Pixels {
  const { along, across, value, column, row } = pixels
  if (pixels === scratch) {
    return {
      along: along.slice(0, n),
      across: across.slice(0, n),
      value: value.slice(0, n),
      column: column.slice(0, n),
      row: row.slice(0, n),
    }
  }
  return {
    along: along.subarray(0, n),
    across: across.subarray(0, n),
    value: value.subarray(0, n),
    column: column.subarray(0, n),
    row: row.subarray(0, n),
  }
}
