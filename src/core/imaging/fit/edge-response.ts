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
  for (let i = 0; i <= nodes; i++) {
    const u = -i / fine
    const f = single ? oneBox(u + half, u - half, b) : twoBoxes(u + half, u + inner, u - inner, u - half, b)
    step[nodes - i] = f[0] * area
    spread[nodes - i] = f[1] * area
    slope[nodes - i] = f[2] * area
    step[nodes + i] = 1 - f[0] * area
    spread[nodes + i] = f[1] * area
    slope[nodes + i] = -f[2] * area
  }
  step[2 * nodes + 1] = 1
  return { reach, fine, step, spread, slope }
}

type Three = [step: number, spread: number, slope: number]

function oneBox(high: number, low: number, b: number): Three {
  const [h1, h0, hd] = integrals(high, b)
  const [l1, l0, ld] = integrals(low, b)
  return [h1 - l1, h0 - l0, hd - ld]
}

function twoBoxes(a: number, c: number, d: number, e: number, b: number): Three {
  const [a1, a0] = integrals(a, b)
  const [c1, c0] = integrals(c, b)
  const [d1, d0] = integrals(d, b)
  const [e1, e0] = integrals(e, b)
  const second = (u: number, first: number, zeroth: number) => (u * first + b * b * zeroth) / 2
  return [
    second(a, a1, a0) - second(c, c1, c0) - second(d, d1, d0) + second(e, e1, e0),
    a1 - c1 - d1 + e1,
    a0 - c0 - d0 + e0,
  ]
}

/** First integral of the normal distribution of standard deviation b, the distribution, its density. */
function integrals(u: number, b: number): Three {
  const x = u / b
  const cumulative = normalCumulative(x)
  const density = normalDensity(x)
  return [u * cumulative + b * density, cumulative, density / b]
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
