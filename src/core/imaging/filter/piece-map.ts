import type { Strip } from '../strip/strip.ts'
import { type ColumnRange, cumulate, fillBars, GAP, groundReach, PER_PIXEL } from './bar-filter.ts'

/** Widths that are looked for, pixels. */
const COARSE_WIDTHS = [1.5, 2.5, 4, 6, 9, 13, 19, 28, 40] as const

/** How far to both sides a strip must reach for strokes this wide and this far off to be seen, pixels. */
export const mapReach = (reach: number, widest: number): number =>
  Math.ceil(reach + widest + groundReach(widest) + GAP + 2)

/**
 * For each piece of a strip, width looked for and place across (every half pixel): by how many grey values the inside of
 * a bar there differs from the ground on both sides: the lesser of the two, 0 when they disagree.
 */
export interface PieceMap {
  pieces: number
  widths: readonly number[]
  /** Place across of the first column, pixels; then every half pixel. */
  low: number
  columns: number
  /** By width, piece, column. */
  bars: Float32Array[]
  /** Pieces that are in the picture. */
  there: boolean[]
}

export function pieceMap(strip: Strip, low: number, high: number, widest: number): PieceMap {
  const columns = columnsFor(low, high)
  const means = emptyMeans(strip.pieces.length, columns)
  strip.pieces.forEach((piece, k) => {
    for (let i = piece.first; i < piece.end; i++) {
      const bin = Math.floor(((strip.across[i] as number) - low) * PER_PIXEL)
      if (bin < 0 || bin >= columns) continue
      const at = k * columns + bin
      means.total[at] = (means.total[at] as number) + (strip.value[i] as number)
      means.count[at] = (means.count[at] as number) + 1
    }
  })
  const there = strip.pieces.map((p) => p.covered > 0.5)
  return mapOf(means, there, low, columns, widest)
}

export const columnsFor = (low: number, high: number): number => Math.floor((high - low) * PER_PIXEL) + 1

/** Sums and counts of grey values by piece and place across. */
export interface Means {
  total: Float64Array
  count: Uint16Array
}

let scratch: Means = { total: new Float64Array(0), count: new Uint16Array(0) }

/** Good until the next call. */
export function emptyMeans(pieces: number, columns: number): Means {
  const size = pieces * columns
  if (scratch.total.length < size) scratch = { total: new Float64Array(size), count: new Uint16Array(size) }
  scratch.total.fill(0, 0, size)
  scratch.count.fill(0, 0, size)
  return scratch
}

/** @param spanOf the columns that will be read, when not all are */
export function mapOf(
  means: Means,
  there: boolean[],
  low: number,
  columns: number,
  widest: number,
  bars?: Float32Array[],
  spanOf: (width: number) => ColumnRange = () => ({ first: 0, last: columns - 1, step: 1 }),
): PieceMap {
  const widths = COARSE_WIDTHS.filter((w) => w <= widest)
  bars ??= widths.map(() => new Float32Array(there.length * columns))
  const spans = widths.map(spanOf)
  const sums = new Float64Array(columns + 1)
  for (let k = 0; k < there.length; k++) {
    if (!cumulate(means, k * columns, columns, sums)) continue
    for (let i = 0; i < widths.length; i++)
      fillBars(
        sums,
        columns,
        widths[i] as number,
        bars[i] as Float32Array,
        k * columns,
        spans[i] as ColumnRange,
      )
  }
  return { pieces: there.length, widths, low, columns, bars, there }
}

/** The bar of a width (by its index) of a piece at a place across. */
export function barAt(map: PieceMap, width: number, piece: number, across: number): number {
  const at = (across - map.low) * PER_PIXEL
  const c = Math.floor(at)
  if (c < 0 || c + 1 >= map.columns) return 0
  const bars = map.bars[width] as Float32Array
  const i = piece * map.columns + c
  const f = at - c
  return (bars[i] as number) * (1 - f) + (bars[i + 1] as number) * f
}

/** Signal to noise of a bar seen over a length, for unit contrast and noise. */
export const barWeight = (width: number, length: number): number =>
  Math.sqrt(length / (1 / width + 1 / groundReach(width)))
