import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { Strip } from '../strip/strip.ts'
import {
  type ColumnRange,
  cumulate,
  fillBars,
  GAP,
  type GreyMeans,
  groundReach,
  PER_PIXEL,
} from './bar-filter.ts'

const { f32, f64, u16 } = elements

/** Widths that are looked for, pixels. */
const COARSE_WIDTHS = [1.5, 2.5, 4, 6, 9, 13, 19, 28, 40] as const

/** How far to both sides a strip must reach for strokes this wide and this far off to be seen, pixels. */
export const reachAcross = (reach: number, widest: number): number =>
  Math.ceil(reach + widest + groundReach(widest) + GAP + 2)

/** The bars of one width. */
export interface BarLayer {
  /** Pixels. */
  width: number
  /** By piece and column: see `fillBars`. */
  bars: Float32Array
}

/** For each piece of a way, width looked for and place across (every half pixel): the bar there. */
export interface BarGrid {
  pieces: number
  layers: readonly BarLayer[]
  /** Place across of the first column, pixels; then every half pixel. */
  low: number
  columns: number
  /** Pieces that are in the picture. */
  there: boolean[]
  /** Room for a value of each piece, for whoever scores a way along the grid. */
  held: Float64Array
  sorted: Float64Array
}

export const columnsFor = (low: number, high: number): number => Math.floor((high - low) * PER_PIXEL) + 1

export const emptyMeans = (pieces: number, columns: number): GreyMeans => ({
  total: new Float64Array(pieces * columns),
  count: new Uint16Array(pieces * columns),
})

/** A grid with no bar in it yet. */
export function emptyGrid(pieces: number, low: number, columns: number, widest: number): BarGrid {
  const widths = COARSE_WIDTHS.filter((w) => w <= widest)
  return {
    pieces,
    layers: widths.map((width) => ({ width, bars: new Float32Array(pieces * columns) })),
    low,
    columns,
    there: new Array<boolean>(pieces).fill(false),
    held: new Float64Array(pieces),
    sorted: new Float64Array(pieces),
  }
}

/** Fills a grid in from the means. @param rangeOf the columns that will be read, by width, when not all are */
export function fillGrid(
  grid: BarGrid,
  means: GreyMeans,
  rangeOf: (width: number) => ColumnRange = () => ({ first: 0, last: grid.columns - 1, step: 1 }),
): void {
  const { columns } = grid
  const sums = new Float64Array(columns + 1)
  const ranges = grid.layers.map((layer) => ({ layer, range: rangeOf(layer.width) }))
  for (let k = 0; k < grid.pieces; k++) {
    if (!cumulate(means, k * columns, columns, sums)) continue
    for (const { layer, range } of ranges)
      fillBars(sums, columns, layer.width, layer.bars, k * columns, range)
  }
}

/** The bars along a strip. @param widest bar looked for, pixels */
export function barGrid(strip: Strip, low: number, high: number, widest: number): BarGrid {
  const columns = columnsFor(low, high)
  const grid = emptyGrid(strip.pieces.length, low, columns, widest)
  const { total, count } = emptyMeans(grid.pieces, columns)
  strip.pieces.forEach((piece, k) => {
    for (let i = piece.first; i < piece.end; i++) {
      const bin = Math.floor((f64(strip.across, i) - low) * PER_PIXEL)
      if (bin < 0 || bin >= columns) continue
      const at = k * columns + bin
      total[at] = f64(total, at) + f64(strip.value, i)
      count[at] = u16(count, at) + 1
    }
  })
  grid.there = strip.pieces.map((p) => p.covered > 0.5)
  fillGrid(grid, { total, count })
  return grid
}

/** The bar of a piece at a place across. */
export function barAt({ low, columns }: BarGrid, { bars }: BarLayer, piece: number, across: number): number {
  const at = (across - low) * PER_PIXEL
  const c = Math.floor(at)
  if (c < 0 || c + 1 >= columns) return 0
  const i = piece * columns + c
  const f = at - c
  return f32(bars, i) * (1 - f) + f32(bars, i + 1) * f
}

/** Signal to noise of a bar seen over a length, for unit contrast and noise. */
export const barWeight = (width: number, length: number): number =>
  Math.sqrt(length / (1 / width + 1 / groundReach(width)))
