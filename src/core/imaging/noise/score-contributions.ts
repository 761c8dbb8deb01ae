import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { edgesOf, guessAt } from '../fit/strip-equations.ts'
import type { StripFit } from '../fit/strip-fit.ts'
import { StrokeModel } from '../fit/stroke-model.ts'
import type { Strip } from '../strip/strip.ts'
import { groupsOf, middlePieces, pixelsIn } from './pixel-groups.ts'

const { f64, i32 } = elements

/**
 * Directions that the fit takes off each group of pieces: ground, along, across, contrast, centre, width, turn, blur. One
 * that was left out would take noise that goes together from the residuals unseen: sigma would come out too small.
 */
export const BASIS = 8
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
  const model = new StrokeModel()
  let at = 0
  groupsOf(strip, chosen).forEach((pieces, g) => {
    const start = at
    const middle = strip.pieces[pieces[pieces.length >> 1] ?? 0]?.middle ?? 0
    for (const k of pieces) {
      const piece = strip.pieces[k]
      const edge = edges[k]
      if (piece === undefined || edge === undefined) continue
      const guess = guessAt(piece, fit)
      for (let p = piece.first; p < piece.end; p++, at++) {
        const s = f64(strip.along, p)
        const t = f64(strip.across, p)
        model.read(edge, t - guess.offset - guess.turn * s, guess)
        const v = at * VALUES
        values[v] = f64(strip.value, p)
        values[v + 1] = 1
        values[v + 2] = s + piece.middle - middle
        values[v + 3] = t
        values[v + 4] = model.stroke
        values[v + 5] = model.place
        values[v + 6] = model.width + withBlur * model.blur
        values[v + 7] = model.place * (s + piece.middle - middle)
        values[v + 8] = model.blur
        group[at] = g
        column[at] = i32(strip.column, p)
        row[at] = i32(strip.row, p)
      }
    }
    orthonormalise(values, start, at)
    takeOff(values, start, at)
  })
  return { n, values, group, ...indexOf(column, row, margin) }
}

/**
 * A pixel pulls on the width as the fit's inverse mixes the columns of width and blur, which are fitted together: by so
 * much of the blur's column to one of the width's.
 */
function blurInWidth({ inverse }: StripFit): number {
  const m = Math.sqrt(inverse.length)
  const [width, blur] = [m - 2, m - 1]
  const own = f64(inverse, width * m + width)
  return own > 0 ? f64(inverse, width * m + blur) / own : 0
}

function dot(values: Float64Array, start: number, end: number, a: number, b: number): number {
  let sum = 0
  for (let i = start * VALUES; i < end * VALUES; i += VALUES) sum += f64(values, i + a) * f64(values, i + b)
  return sum
}

/** Column a less f times column b. */
function less(values: Float64Array, start: number, end: number, a: number, b: number, f: number): void {
  for (let i = start * VALUES; i < end * VALUES; i += VALUES)
    values[i + a] = f64(values, i + a) - f * f64(values, i + b)
}

/** Gram–Schmidt, in place; a column that adds nothing becomes 0. */
function orthonormalise(values: Float64Array, start: number, end: number): void {
  for (let b = 1; b <= BASIS; b++) {
    const before = Math.sqrt(dot(values, start, end, b, b))
    for (let a = 1; a < b; a++) less(values, start, end, b, a, dot(values, start, end, a, b))
    const left = Math.sqrt(dot(values, start, end, b, b))
    const scale = left > 1e-6 * before ? 1 / left : 0
    for (let i = start * VALUES + b; i < end * VALUES; i += VALUES) values[i] = f64(values, i) * scale
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
    left = Math.min(left, i32(column, i))
    right = Math.max(right, i32(column, i))
    top = Math.min(top, i32(row, i))
    bottom = Math.max(bottom, i32(row, i))
  }
  const stride = right - left + 1 + 2 * margin
  const index = new Int32Array(stride * (bottom - top + 1 + 2 * margin))
  const place = new Int32Array(column.length)
  for (let i = 0; i < column.length; i++) {
    const at = (i32(row, i) - top + margin) * stride + i32(column, i) - left + margin
    place[i] = at
    index[at] = i + 1
  }
  return { index, stride, place }
}
