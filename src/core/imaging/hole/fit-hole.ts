import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { invertSpd, timesVector } from '../../linear-algebra/invert-spd.ts'
import { leastSquares } from '../../linear-algebra/linear-least-squares.ts'
import { ROUNDED_BLUR, SPREAD_OF_BLUR, USUAL_BLUR } from '../fit/strip-fit.ts'
import { BLUR, HoleModel, type HoleShape, LINEAR, parametersOf, SHAPE } from './hole-model.ts'

const { f64 } = elements

/** All that is fitted: the shape, then what values hang on linearly. */
export const ALL = SHAPE + LINEAR
const [GROUND, LINES, CIRCLE] = [SHAPE, SHAPE + 3, SHAPE + 4] as const
export const OF_LINES = LINES
export const OF_CIRCLE = CIRCLE

const MAX_STEPS = 30
/** Pixels; of logarithms and of radians. */
const LONGEST_STEP = 0.7
const LONGEST_SHAPE_STEP = 0.3
const SETTLED = 1e-3
/** Blurs that are fitted, pixels. */
const LEAST_BLUR = 0.15
const MOST_BLUR = 3

/** The pixels of a hole, from its origin; in rows, as they lie in the window. */
export interface HolePixels {
  x: Float64Array
  y: Float64Array
  value: Float64Array
  column: Int32Array
  row: Int32Array
  isBilevel: boolean
}

/** A hole that was fitted to its pixels. */
export interface HoleFit {
  parameters: Float64Array
  /** By pixel: what is left of its value; and its derivatives to all parameters, row by row. */
  residual: Float64Array
  slopes: Float64Array
  squares: number
  /** Of the normal equations, the usual blur among them. */
  inverse: Float64Array
}

/**
 * Two straight strokes and a round one fitted together to the pixels of a small hole: each leaves so little of the others
 * that none can be fitted by itself.
 * Source: Levenberg 1944 and Marquardt 1963. @returns null when it does not settle
 */
export function fitHole(pixels: HolePixels, start: HoleShape): HoleFit | null {
  const blur = pixels.isBilevel ? ROUNDED_BLUR : start.blur
  let at = withLinear(pixels, parametersOf({ ...start, blur }))
  let now = at && assemble(pixels, at)
  if (at === null || now === null) return null
  let damping = 1e-2
  for (let step = 0; step < MAX_STEPS; step++) {
    const variance = varianceOf(now.squares, pixels)
    const { matrix, side } = withUsualBlur(now, at, variance)
    if (pixels.isBilevel) holdBlur(matrix, side)
    for (let i = 0; i < ALL; i++) matrix[i * ALL + i] = f64(matrix, i * ALL + i) * (1 + damping) + 1e-12
    const inverse = invertSpd(matrix, ALL)
    if (inverse === null) return null
    const change = timesVector(inverse, side)
    const next: Float64Array<ArrayBuffer> = at.map((p, i) => p + limited(f64(change, i), i))
    next[BLUR] = Math.min(Math.max(f64(next, BLUR), Math.log(LEAST_BLUR)), Math.log(MOST_BLUR))
    const after = assemble(pixels, next)
    const before = now.squares + variance * misfitOf(at)
    if (after.squares + variance * misfitOf(next) <= before) {
      const isSettled = before - after.squares - variance * misfitOf(next) < SETTLED * variance
      at = next
      now = after
      damping = Math.max(damping / 10, 1e-7)
      if (isSettled) return conclude(pixels, at, now)
    } else {
      damping *= 10
      if (damping > 1e7) return conclude(pixels, at, now)
    }
  }
  return conclude(pixels, at, now)
}

const limited = (by: number, i: number): number => {
  if (i >= SHAPE) return by
  const most = i === 0 || i === 3 || (i >= 6 && i <= 8) ? LONGEST_STEP : LONGEST_SHAPE_STEP
  return Math.max(-most, Math.min(most, by))
}

const misfitOf = (p: Float64Array): number => ((f64(p, BLUR) - USUAL_BLUR) / SPREAD_OF_BLUR) ** 2

export const varianceOf = (squares: number, { value }: HolePixels): number =>
  Math.max(squares / Math.max(value.length - ALL, 1), 1e-2)

interface Assembled {
  matrix: Float64Array
  side: Float64Array
  squares: number
  residual: Float64Array
  slopes: Float64Array
}

function assemble({ x, y, value }: HolePixels, p: Float64Array): Assembled {
  const model = new HoleModel(p)
  const matrix = new Float64Array(ALL * ALL)
  const side = new Float64Array(ALL)
  const residual = new Float64Array(value.length)
  const slopes = new Float64Array(value.length * ALL)
  const [lines, circle] = [f64(p, LINES), f64(p, CIRCLE)]
  let squares = 0
  for (let k = 0; k < value.length; k++) {
    model.read(f64(x, k), f64(y, k))
    const row = slopes.subarray(k * ALL, (k + 1) * ALL)
    for (let i = 0; i < SHAPE; i++) row[i] = lines * f64(model.ofLines, i) + circle * f64(model.ofRound, i)
    row[GROUND] = 1
    row[GROUND + 1] = f64(x, k)
    row[GROUND + 2] = f64(y, k)
    row[LINES] = model.lines
    row[CIRCLE] = model.round
    const fitted =
      f64(p, GROUND) +
      f64(p, GROUND + 1) * f64(x, k) +
      f64(p, GROUND + 2) * f64(y, k) +
      lines * model.lines +
      circle * model.round
    const left = f64(value, k) - fitted
    residual[k] = left
    squares += left * left
    for (let i = 0; i < ALL; i++) {
      const slope = f64(row, i)
      if (slope === 0) continue
      side[i] = f64(side, i) + slope * left
      for (let j = 0; j <= i; j++) matrix[i * ALL + j] = f64(matrix, i * ALL + j) + slope * f64(row, j)
    }
  }
  for (let i = 0; i < ALL; i++) for (let j = 0; j < i; j++) matrix[j * ALL + i] = f64(matrix, i * ALL + j)
  return { matrix, side, squares, residual, slopes }
}

function withUsualBlur({ matrix, side }: Assembled, p: Float64Array, variance: number) {
  const weight = variance / SPREAD_OF_BLUR ** 2
  const out = { matrix: Float64Array.from(matrix), side: Float64Array.from(side) }
  const i = BLUR * ALL + BLUR
  out.matrix[i] = f64(matrix, i) + weight
  out.side[BLUR] = f64(side, BLUR) - weight * (f64(p, BLUR) - USUAL_BLUR)
  return out
}

/** A scan of one bit has no blur left: it is fitted with the least that its rounding evens out at. */
function holdBlur(matrix: Float64Array, side: Float64Array): void {
  for (let i = 0; i < ALL; i++) {
    matrix[BLUR * ALL + i] = 0
    matrix[i * ALL + BLUR] = 0
  }
  matrix[BLUR * ALL + BLUR] = 1
  side[BLUR] = 0
}

function conclude(pixels: HolePixels, parameters: Float64Array, now: Assembled): HoleFit | null {
  const { matrix, side } = withUsualBlur(now, parameters, varianceOf(now.squares, pixels))
  if (pixels.isBilevel) holdBlur(matrix, side)
  const inverse = invertSpd(matrix, ALL)
  // What is held has no variance.
  if (pixels.isBilevel && inverse !== null) inverse[BLUR * ALL + BLUR] = 0
  const { residual, slopes, squares } = now
  return inverse && { parameters, residual, slopes, squares, inverse }
}

/** All parameters, with what values hang on linearly as the shape has it. */
function withLinear({ x, y, value }: HolePixels, shape: Float64Array): Float64Array<ArrayBuffer> | null {
  const model = new HoleModel(shape)
  const rows = Array.from(value, (v, k) => {
    model.read(f64(x, k), f64(y, k))
    return [v, [1, f64(x, k), f64(y, k), model.lines, model.round]] as const
  })
  const linear = leastSquares(rows, LINEAR)
  return linear && Float64Array.from([...shape, ...linear.solution])
}
