import { modelColumns } from '../fit/piece-equations.ts'
import { edgesOf, guessAt } from '../fit/strip-equations.ts'
import type { StripFit } from '../fit/strip-fit.ts'
import type { Strip } from '../strip/strip.ts'
import { groupsOf, middlePieces, pixelsIn } from './pixel-groups.ts'

/** Directions that the fit takes off each group of pieces: ground, along, across, contrast, centre, width. */
export const BASIS = 6
/** Which of them pull on the centre and on the width. */
export const [CENTRE, WIDTH] = [4, 5] as const
/** Numbers kept of a pixel: its residual, then its share of each direction. */
export const VALUES = BASIS + 1

/** What each pixel does: its residual, and its pull on what is fitted. */
export interface ScoreContributions {
  n: number
  /** By pixel, `VALUES` each; the directions are orthonormal in each group. */
  values: Float64Array
  group: Int32Array
  /** Pixel (+1) by its place in the window, with a margin round about; 0 where there is none. */
  index: Int32Array
  stride: number
  /** Where each pixel is in the index. */
  place: Int32Array
}

/** @param margin of the index, pixels. @returns null when there are too few pixels to tell anything */
export function scoreContributions(
  strip: Strip,
  fit: StripFit,
  kept: readonly boolean[],
  margin: number,
): ScoreContributions | null {
  const chosen = middlePieces(strip, kept)
  const n = pixelsIn(strip, chosen)
  if (n < 60) return null
  const values = new Float64Array(n * VALUES)
  const group = new Int32Array(n)
  const column = new Int32Array(n)
  const row = new Int32Array(n)
  const edges = edgesOf(strip, fit.blur)
  const withBlur = blurInWidth(fit)
  let at = 0
  groupsOf(strip, chosen).forEach((pieces, g) => {
    const start = at
    const middle = strip.pieces[pieces[pieces.length >> 1] as number]?.middle ?? 0
    for (const k of pieces) {
      const piece = strip.pieces[k]
      const edge = edges[k]
      if (piece === undefined || edge === undefined) continue
      const guess = guessAt(strip, k, fit)
      for (let p = piece.first; p < piece.end; p++, at++) {
        modelColumns(edge, guess, strip.along[p] as number, strip.across[p] as number, COLUMNS)
        const v = at * VALUES
        values[v] = strip.value[p] as number
        values[v + 1] = COLUMNS[0] as number
        values[v + 2] = (strip.along[p] as number) + piece.middle - middle
        values[v + 3] = COLUMNS[2] as number
        values[v + 4] = COLUMNS[3] as number
        values[v + 5] = COLUMNS[4] as number
        values[v + 6] = (COLUMNS[6] as number) + withBlur * (COLUMNS[7] as number)
        group[at] = g
        column[at] = strip.column[p] as number
        row[at] = strip.row[p] as number
      }
    }
    orthonormalise(values, start, at)
    takeOff(values, start, at)
  })
  return { n, values, group, ...indexOf(column, row, margin) }
}

const COLUMNS = new Float64Array(9)

/**
 * A pixel pulls on the width as the fit's inverse mixes the columns of width and blur, which are fitted together: by so
 * much of the blur's column to one of the width's.
 */
function blurInWidth({ inverse }: StripFit): number {
  const m = Math.sqrt(inverse.length)
  const [width, blur] = [m - 2, m - 1]
  const own = inverse[width * m + width] as number
  return own > 0 ? (inverse[width * m + blur] as number) / own : 0
}

function dot(values: Float64Array, start: number, end: number, a: number, b: number): number {
  let sum = 0
  for (let i = start * VALUES; i < end * VALUES; i += VALUES)
    sum += (values[i + a] as number) * (values[i + b] as number)
  return sum
}

/** Column a less f times column b. */
function less(values: Float64Array, start: number, end: number, a: number, b: number, f: number): void {
  for (let i = start * VALUES; i < end * VALUES; i += VALUES)
    values[i + a] = (values[i + a] as number) - f * (values[i + b] as number)
}

/** Gram–Schmidt, in place; a column that adds nothing becomes 0. */
function orthonormalise(values: Float64Array, start: number, end: number): void {
  for (let b = 1; b <= BASIS; b++) {
    const before = Math.sqrt(dot(values, start, end, b, b))
    for (let a = 1; a < b; a++) less(values, start, end, b, a, dot(values, start, end, a, b))
    const left = Math.sqrt(dot(values, start, end, b, b))
    const scale = left > 1e-6 * before ? 1 / left : 0
    for (let i = start * VALUES + b; i < end * VALUES; i += VALUES) values[i] = (values[i] as number) * scale
  }
}

/** What is left of the grey values is the residuals. */
function takeOff(values: Float64Array, start: number, end: number): void {
  for (let b = 1; b <= BASIS; b++) less(values, start, end, 0, b, dot(values, start, end, 0, b))
}

function indexOf(
  column: Int32Array,
  row: Int32Array,
  margin: number,
): Pick<ScoreContributions, 'index' | 'stride' | 'place'> {
  let [left, top, right, bottom] = [column[0] ?? 0, row[0] ?? 0, column[0] ?? 0, row[0] ?? 0]
  for (let i = 1; i < column.length; i++) {
    left = Math.min(left, column[i] as number)
    right = Math.max(right, column[i] as number)
    top = Math.min(top, row[i] as number)
    bottom = Math.max(bottom, row[i] as number)
  }
  const stride = right - left + 1 + 2 * margin
  const index = new Int32Array(stride * (bottom - top + 1 + 2 * margin))
  const place = new Int32Array(column.length)
  for (let i = 0; i < column.length; i++) {
    const at = ((row[i] as number) - top + margin) * stride + (column[i] as number) - left + margin
    place[i] = at
    index[at] = i + 1
  }
  return { index, stride, place }
}
