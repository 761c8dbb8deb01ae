import { inverse, Matrix } from 'ml-matrix'
import type { Look } from './simulate/look.ts'
import { draw, type Picture, type Scene } from './simulate/picture.ts'
import { grained } from './simulate/scan.ts'
import type { Scan } from './simulate/scan-of.ts'

export interface BoundOf {
  /** What is seen without noise, as a function of the parameters. */
  picture: (parameters: readonly number[]) => Scene
  at: readonly number[]
  /** Steps of the numerical differentiation, in the units of the parameters. */
  steps: readonly number[]
  /** Which pixels the estimator may use, by their centres. */
  used: (x: number, y: number) => boolean
}

/**
 * Cramér–Rao bound: the covariance of the parameters of a picture in white normal noise that no unbiased estimator
 * betters. It is the inverse of the Fisher information Σ ∂v/∂p ∂v/∂q / σ², the derivatives by central differences of
 * the picture itself.
 * Source: Kay, Fundamentals of Statistical Signal Processing: Estimation Theory (1993), chapter 3.
 * @param noise grey values; or a scan: then the root mean square of its difference from itself before noise, over the pixels that tell of the parameters
 */
export function cramerRao(of: BoundOf, noise: number | Scan): Matrix {
  const slopes = slopesOf(of).map((s) => s.data)
  const sigma = typeof noise === 'number' ? noise : rmsWhereTelling(slopes, noise)
  return inverse(products(slopes)).mul(sigma * sigma)
}

/**
 * The covariance that least squares has in noise that was blurred by a Gaussian of this spread: A⁻¹ B A⁻¹, B the
 * products of the derivatives carried back through the blur. The Cramér–Rao bound proper would undo the blur of the
 * noise, which no rounded scan allows.
 * Source: Kay (1993), chapter 8, least squares under coloured noise.
 */
export function leastSquaresInGrain(of: BoundOf, noise: number, grain: number): Matrix {
  const slopes = slopesOf(of)
  const back = slopes.map(({ width, height, data }) => grained(data, width, height, grain))
  const inner = inverse(products(slopes.map((s) => s.data)))
  return inner
    .mmul(products(back))
    .mmul(inner)
    .mul(noise * noise)
}

/** The bound that a scan of this look is held against. */
export function boundFor(look: Look, scan: Scan, of: BoundOf): Matrix {
  if (look.finish !== 'grey') return cramerRao(of, scan)
  return look.grain > 0 ? leastSquaresInGrain(of, look.noise, look.grain) : cramerRao(of, look.noise)
}

/** Variance of a linear combination of the parameters. */
export function varianceOf(covariance: Matrix, weights: readonly number[]): number {
  const w = Matrix.columnVector([...weights])
  return w.transpose().mmul(covariance).mmul(w).get(0, 0)
}

/** Derivative of every pixel with respect to each parameter; 0 where the pixel may not be used, which is not even drawn. */
function slopesOf({ picture, at, steps, used }: BoundOf): Picture[] {
  const { width, height } = picture(at)
  const only = Uint8Array.from({ length: width * height }, (_, k) =>
    used((k % width) + 0.5, Math.floor(k / width) + 0.5) ? 1 : 0,
  )
  return at.map((_, i) => {
    const step = steps[i] as number
    const [high, low] = [step, -step].map(
      (by) => draw(picture(at.map((p, j) => (j === i ? p + by : p))), only).data,
    ) as [Float64Array, Float64Array]
    return { width, height, data: high.map((v, k) => (v - (low[k] as number)) / (2 * step)) }
  })
}

function products(slopes: readonly Float64Array[]): Matrix {
  const out = Matrix.zeros(slopes.length, slopes.length)
  slopes.forEach((a, i) => {
    slopes.forEach((b, j) => {
      let sum = 0
      for (let k = 0; k < a.length; k++) sum += (a[k] as number) * (b[k] as number)
      out.set(i, j, sum)
    })
  })
  return out
}

function rmsWhereTelling(slopes: readonly Float64Array[], { window, clean }: Scan): number {
  let squares = 0
  let count = 0
  for (let k = 0; k < clean.data.length; k++) {
    if (!slopes.some((slope) => Math.abs(slope[k] as number) > 1e-3)) continue
    squares += ((window.data[k] as number) - (clean.data[k] as number)) ** 2
    count++
  }
  return Math.sqrt(squares / count)
}
