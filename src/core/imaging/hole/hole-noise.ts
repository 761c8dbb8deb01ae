import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { ALL, type HoleFit, type HolePixels, varianceOf } from './fit-hole.ts'

const { f64 } = elements

/** Noise that goes together is followed to so many pixels. */
const REACH = 3
/** The least share of what white noise makes of it. */
const LEAST = 0.7

/** A pair of pixels so far apart, each once. */
interface Lag {
  dx: number
  dy: number
}

const ringOf = ({ dx, dy }: Lag): number => Math.max(Math.abs(dx), dy)
const LAGS: readonly Lag[] = Array.from({ length: REACH + 1 }, (_, dy) =>
  Array.from({ length: 2 * REACH + 1 }, (__, i) => ({ dx: i - REACH, dy })),
)
  .flat()
  .filter(({ dx, dy }) => dy > 0 || dx > 0)

/**
 * Covariance of two quantities that hang on a hole's parameters, by what its residuals show of the noise: how it goes
 * together from pixel to pixel, and how much stronger it is where pixels pull on them.
 * Source: sandwich estimator of variance (Huber 1967; White 1980); what the fit takes off residuals is returned as for white
 * noise.
 * @param wanted derivatives of each to the parameters
 * @returns xx, xy, yy
 */
export function holeCovariance(
  pixels: HolePixels,
  fit: HoleFit,
  wanted: readonly [Float64Array, Float64Array],
): [number, number, number] {
  const n = pixels.value.length
  const { slopes, inverse, residual, squares } = fit
  const variance = varianceOf(squares, pixels)
  /** By pixel: its pull on each parameter, and on what is wanted. */
  const pulls = new Float64Array(n * ALL)
  const [a, b] = [new Float64Array(n), new Float64Array(n)]
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < ALL; i++) {
      let sum = 0
      for (let j = 0; j < ALL; j++) sum += f64(inverse, i * ALL + j) * f64(slopes, k * ALL + j)
      pulls[k * ALL + i] = sum
      a[k] = f64(a, k) + sum * f64(wanted[0], i)
      b[k] = f64(b, k) + sum * f64(wanted[1], i)
    }
  }
  /** What the fit takes off the product of the residuals of two pixels. */
  const taken = (k: number, l: number): number => {
    let sum = 0
    for (let i = 0; i < ALL; i++) sum += f64(pulls, k * ALL + i) * f64(slopes, l * ALL + i)
    return variance * sum
  }
  const white: [number, number, number] = [0, 0, 0]
  const uneven: [number, number, number] = [0, 0, 0]
  for (let k = 0; k < n; k++) {
    const here = f64(residual, k) ** 2 + taken(k, k)
    add(white, variance, f64(a, k), f64(b, k), f64(a, k), f64(b, k))
    add(uneven, here, f64(a, k), f64(b, k), f64(a, k), f64(b, k))
  }
  // Noise that is stronger where it counts may be told too low by so few pixels, never by chance too high for long.
  const evened = pixels.isBilevel ? white : larger(white, uneven)
  const together: [number, number, number] = [0, 0, 0]
  const index = new Map<number, number>()
  for (let k = 0; k < n; k++) index.set(placeOf(pixels, k, 0, 0), k)
  for (let ring = 1; ring <= REACH; ring++) {
    let significant = 0
    const lags = LAGS.filter((lag) => ringOf(lag) === ring)
    const sums: [number, number, number] = [0, 0, 0]
    for (const { dx, dy } of lags) {
      let product = 0
      let count = 0
      const pull: [number, number, number] = [0, 0, 0]
      for (let k = 0; k < n; k++) {
        const l = index.get(placeOf(pixels, k, dx, dy))
        if (l === undefined) continue
        product += f64(residual, k) * f64(residual, l) + taken(k, l)
        count++
        add(pull, 1, f64(a, k), f64(b, k), f64(a, l), f64(b, l))
      }
      if (count === 0) continue
      const covariance = product / count
      significant += (covariance / variance) ** 2 * count
      sums[0] += 2 * covariance * pull[0]
      sums[1] += 2 * covariance * pull[1]
      sums[2] += 2 * covariance * pull[2]
    }
    if (significant < lags.length + 2.5 * Math.sqrt(2 * lags.length)) break
    together[0] += sums[0]
    together[1] += sums[1]
    together[2] += sums[2]
  }
  const factor = Math.max((trace(white) + trace(together)) / trace(white), LEAST)
  return [evened[0] * factor, evened[1] * factor, evened[2] * factor]
}

const trace = ([xx, , yy]: readonly [number, number, number]): number => xx + yy

const larger = (p: [number, number, number], q: [number, number, number]): [number, number, number] =>
  trace(q) > trace(p) ? q : p

/** Adds a covariance of two pixels, by their pulls on both quantities. */
function add(to: [number, number, number], by: number, ak: number, bk: number, al: number, bl: number): void {
  to[0] += by * ak * al
  to[1] += (by * (ak * bl + bk * al)) / 2
  to[2] += by * bk * bl
}

/** A number for each place of a window. */
const placeOf = ({ column, row }: HolePixels, k: number, dx: number, dy: number): number =>
  ((row[k] ?? 0) + dy) * 65_536 + (column[k] ?? 0) + dx
