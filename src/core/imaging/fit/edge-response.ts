import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { normalCumulative, normalDensity } from './normal.ts'

const { f64 } = elements

/** Steps of the table per pixel: so many a standard deviation of the blur, within limits. */
const PER_BLUR = 12
const FINEST = 24
const COARSEST = 3

/**
 * What a scan makes of a sharp edge: a step from 0 to 1 blurred by a Gaussian and averaged over the pixel's own square,
 * seen across the edge. A table, read by cubic Hermite interpolation.
 */
export interface EdgeResponse {
  /** Beyond this distance from the edge, pixels, it is 0 or 1. */
  reach: number
  /** Steps of the table per pixel. */
  fine: number
  /** Step, its first (line spread) and second derivative, at −reach, …, +reach. */
  step: Float64Array
  spread: Float64Array
  slope: Float64Array
}

/** How an edge is seen, by the unit vector across it and how blurred it is, pixels. */
export type ResponseOfEdge = (across: readonly [number, number], blur: number) => EdgeResponse

/** The response at one distance from the edge, and its first and second derivative there. */
export interface EdgeReading {
  step: number
  spread: number
  slope: number
}

export const edgeReading = (): EdgeReading => ({ step: Number.NaN, spread: Number.NaN, slope: Number.NaN })

/** Below this width a box is as good as a Gaussian of the same variance. */
const NARROW = 0.06

/**
 * @param across unit vector across the edge, in pixels of the scan
 * @param blur standard deviation of the blur, pixels, above 0
 * The pixel's square seen at that direction is two boxes, |cos θ| and |sin θ| wide; with them the response is a
 * second difference of the second integral of the normal distribution, in closed form.
 */
export function edgeResponse(across: readonly [number, number], blur: number): EdgeResponse {
  let wide = Math.max(Math.abs(across[0]), Math.abs(across[1]))
  const narrow = Math.min(Math.abs(across[0]), Math.abs(across[1]))
  const single = narrow < NARROW
  const b = single ? Math.sqrt(blur * blur + (narrow * narrow) / 12) : blur
  if (single) wide = Math.max(wide, NARROW)
  const half = (wide + (single ? 0 : narrow)) / 2
  const fine = Math.max(COARSEST, Math.min(FINEST, Math.round(PER_BLUR / b)))
  const nodes = Math.ceil((half + 5.5 * b) * fine)
  const reach = nodes / fine
  const step = new Float64Array(2 * nodes + 2)
  const spread = new Float64Array(2 * nodes + 2)
  const slope = new Float64Array(2 * nodes + 2)
  const inner = (wide - narrow) / 2
  const area = 1 / (wide * (single ? 1 : narrow))
  const out = edgeReading()
  for (let i = 0; i <= nodes; i++) {
    const u = -i / fine
    out.step = 0
    out.spread = 0
    out.slope = 0
    if (single) oneBox(u, half, b, out)
    else twoBoxes(u, half, inner, b, out)
    step[nodes - i] = out.step * area
    spread[nodes - i] = out.spread * area
    slope[nodes - i] = out.slope * area
    step[nodes + i] = 1 - out.step * area
    spread[nodes + i] = out.spread * area
    slope[nodes + i] = -out.slope * area
  }
  step[2 * nodes + 1] = 1
  return { reach, fine, step, spread, slope }
}

/** Adds what one box shows, times its area. @param half its width, from its middle at u; b: standard deviation of the blur */
function oneBox(u: number, half: number, b: number, out: EdgeReading): void {
  addCorner(u + half, 1, b, out)
  addCorner(u - half, -1, b, out)
}

/** The same of two boxes, one after the other: their four corners, each integrated once more. */
function twoBoxes(u: number, half: number, inner: number, b: number, out: EdgeReading): void {
  addRamp(u + half, 1, b, out)
  addRamp(u + inner, -1, b, out)
  addRamp(u - inner, -1, b, out)
  addRamp(u - half, 1, b, out)
}

/** Adds the first integral of the normal distribution of standard deviation b, the distribution, its density. */
function addCorner(u: number, sign: number, b: number, out: EdgeReading): void {
  const cumulative = normalCumulative(u / b)
  const density = normalDensity(u / b)
  out.step += sign * (u * cumulative + b * density)
  out.spread += sign * cumulative
  out.slope += sign * (density / b)
}

/** Adds its second integral, its first, the distribution. */
function addRamp(u: number, sign: number, b: number, out: EdgeReading): void {
  const cumulative = normalCumulative(u / b)
  const first = u * cumulative + b * normalDensity(u / b)
  out.step += sign * ((u * first + b * b * cumulative) / 2)
  out.spread += sign * first
  out.slope += sign * cumulative
}

/** @param u distance from the edge, pixels; out: receives what is read there */
export function readEdge(
  { reach, fine, step, spread, slope }: EdgeResponse,
  u: number,
  out: EdgeReading,
): void {
  if (u <= -reach || u >= reach) {
    out.step = u > 0 ? 1 : 0
    out.spread = 0
    out.slope = 0
    return
  }
  const at = (u + reach) * fine
  const i = Math.floor(at)
  const f = at - i
  const g = 1 - f
  const s0 = f64(spread, i)
  const s1 = f64(spread, i + 1)
  const d0 = f64(slope, i)
  const d1 = f64(slope, i + 1)
  const start = g * g * (1 + 2 * f)
  const end = f * f * (3 - 2 * f)
  const startSlope = (f * g * g) / fine
  const endSlope = (-f * f * g) / fine
  out.step = start * f64(step, i) + end * f64(step, i + 1) + startSlope * s0 + endSlope * s1
  out.spread = start * s0 + end * s1 + startSlope * d0 + endSlope * d1
  out.slope = g * d0 + f * d1
}
