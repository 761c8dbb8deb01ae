import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { invertSpd, timesVector } from '../../linear-algebra/invert-spd.ts'
import type { Strip } from '../strip/strip.ts'
import { hasTwoValues } from '../window/bilevel.ts'
import { PieceEquations } from './piece-equations.ts'
import { type Assembled, assemble, type StrokeGuess } from './strip-equations.ts'

const { f64 } = elements

/** The stroke along a strip: where it lies across the curve, by the curve's parameters, and what it looks like. */
export interface StripFit extends StrokeGuess {
  /** Mean contrast of the pieces fitted, below 0 for a darker stroke. */
  contrast: number
  /** Variance of the grey values about the fit. */
  variance: number
  /** Inverse normal matrix of (the curve's parameters, ln width, ln blur): their covariance for white noise of variance 1. */
  inverse: Float64Array
  dof: number
}

/** What is commonly known of the blur of a scan: ln blur, and its standard deviation. */
export const USUAL_BLUR = Math.log(0.7)
export const SPREAD_OF_BLUR = 0.8
/** −2 ln of how usual a blur is. */
export const usualBlurMisfit = (blur: number): number => ((Math.log(blur) - USUAL_BLUR) / SPREAD_OF_BLUR) ** 2
const BLURS: readonly [number, number] = [0.12, 8]
/**
 * The least blur that a scan of one bit is fitted with, which has none left: a soft edge is the mean of the pixels on both
 * sides of it, along which the rounding evens out; a sharp one hangs on the few pixels that it passes through.
 */
export const ROUNDED_BLUR = 0.5
/** A stroke of one bit is a pixel wide at least: where it comes out narrower than this, pixels, it has sharper edges than that. */
const TOO_NARROW = 0.95
const FIRST_SHARP = 0.3
/** Grey values from white to black. */
const WHOLE_SCALE = 255
const WIDTHS: readonly [number, number] = [0.4, 70]

/** An edge softer than this is none, pixels: no use in going on. */
export const HOPELESS = 5
const MAX_STEPS = 15
/** Of the curve's parameters, pixels; of the logarithms of width and blur. */
const LONGEST_STEP = 1.5
const LONGEST_SHAPE_STEP = 0.5
/** A step that improves the sum of squares by less than this share of one pixel's is the last. */
const SETTLED = 1e-3

/**
 * All kept pieces fitted together by least squares on their raw pixels: each has its own ground and contrast, place and
 * shape of the stroke are common. In white noise this reaches the Cramér–Rao bound.
 * Sources: Levenberg 1944 and Marquardt 1963; the linear parameters are eliminated at each step (Golub & Pereyra 1973, in
 * Kaufman's simplification, 1975). Bound: Kay, Estimation Theory (1993), chapter 3.
 * @returns null when the fit does not settle
 */
export function fitStrip(
  strip: Strip,
  start: StartOfFit,
  kept: readonly boolean[],
  shapeFixed = false,
): StripFit | null {
  if (!hasTwoValues(strip.value)) return settle(strip, start, kept, shapeFixed, BLURS)
  const rounded = settle(strip, start, kept, shapeFixed, [ROUNDED_BLUR, BLURS[1]])
  if (rounded === null || rounded.width > TOO_NARROW) return rounded
  return settleSharp(strip, rounded, kept) ?? rounded
}

/**
 * A stroke of one bit that is so level that its edges lie on those of pixels: its pixels tell how much ink there is across it,
 * and as that is black on white, how wide it is.
 */
function settleSharp(strip: Strip, near: StripFit, kept: readonly boolean[]): StripFit | null {
  const sharp = settle(strip, { ...near, blur: FIRST_SHARP }, kept, false, BLURS)
  if (sharp === null) return null
  const width = (Math.abs(sharp.contrast) * sharp.width) / WHOLE_SCALE
  return settle(strip, { parameters: sharp.parameters, width, blur: BLURS[0] }, kept, true, BLURS)
}

interface StartOfFit {
  parameters: ArrayLike<number>
  width: number
  blur: number
}

/** @param blurs the least and the most that may come of it, pixels */
function settle(
  strip: Strip,
  start: StartOfFit,
  kept: readonly boolean[],
  shapeFixed: boolean,
  blurs: readonly [number, number],
): StripFit | null {
  const n = strip.curve.parameters
  const m = n + 2
  let at = { parameters: Float64Array.from(start.parameters), width: start.width, blur: start.blur }
  const equations = new PieceEquations()
  let now = assemble(strip, at, kept, equations)
  if (now === null) return null
  let damping = 1e-3
  for (let step = 0; step < MAX_STEPS; step++) {
    const variance = Math.max(now.squares / now.count, 1e-4)
    const damped = Float64Array.from(now.matrix)
    const side = Float64Array.from(now.side)
    if (shapeFixed) holdShape(damped, side, n)
    else addUsualBlur(damped, side, n, at.blur, variance)
    for (let i = 0; i < m; i++) damped[i * m + i] = f64(damped, i * m + i) * (1 + damping) + 1e-12
    const inverse = invertSpd(damped, m)
    if (inverse === null) return null
    const change = timesVector(inverse, side).map((by, i) => {
      const limit = i < n ? LONGEST_STEP : LONGEST_SHAPE_STEP
      return Math.max(-limit, Math.min(limit, by))
    })
    const largest = change.reduce((most, by) => Math.max(most, Math.abs(by)), 0)
    const next = {
      parameters: at.parameters.map((p, i) => p + f64(change, i)),
      width: clamp(at.width * Math.exp(f64(change, n)), WIDTHS),
      blur: clamp(at.blur * Math.exp(f64(change, n + 1)), blurs),
    }
    const after = assemble(strip, next, kept, equations)
    const penalty = (b: number) => (shapeFixed ? 0 : variance * usualBlurMisfit(b))
    if (after !== null && after.squares + penalty(next.blur) <= now.squares + penalty(at.blur) + 1e-9) {
      const settled = largest < 2e-4 || now.squares - after.squares < SETTLED * variance
      at = next
      now = after
      damping = Math.max(damping / 10, 1e-7)
      if (settled || at.blur > HOPELESS) break
    } else {
      if (largest < 2e-4) break
      damping *= 10
      if (damping > 1e7) break
    }
  }
  return conclude(strip, at, now, kept, shapeFixed)
}

function conclude(
  strip: Strip,
  at: StrokeGuess,
  now: Assembled,
  kept: readonly boolean[],
  shapeFixed: boolean,
): StripFit | null {
  const n = strip.curve.parameters
  const pieces = kept.filter(Boolean).length
  const dof = Math.max(now.count - 4 * pieces - n - 2, 1)
  const variance = now.squares / dof
  const matrix = Float64Array.from(now.matrix)
  if (shapeFixed) holdShape(matrix, new Float64Array(n + 2), n)
  else addUsualBlur(matrix, new Float64Array(n + 2), n, at.blur, Math.max(variance, 1e-4))
  const inverse = invertSpd(matrix, n + 2)
  return inverse === null ? null : { ...at, contrast: now.contrast, variance, inverse, dof }
}

function addUsualBlur(
  matrix: Float64Array,
  side: Float64Array,
  n: number,
  blur: number,
  variance: number,
): void {
  const weight = variance / SPREAD_OF_BLUR ** 2
  const i = n + 1
  matrix[i * (n + 2) + i] = f64(matrix, i * (n + 2) + i) + weight
  side[i] = f64(side, i) - weight * (Math.log(blur) - USUAL_BLUR)
}

function holdShape(matrix: Float64Array, side: Float64Array, n: number): void {
  const m = n + 2
  for (const i of [n, n + 1]) {
    for (let j = 0; j < m; j++) {
      matrix[i * m + j] = 0
      matrix[j * m + i] = 0
    }
    matrix[i * m + i] = 1
    side[i] = 0
  }
}

const clamp = (x: number, [low, high]: readonly [number, number]): number => Math.min(Math.max(x, low), high)
