import * as elements from '../../linear-algebra/elements-unchecked.ts'

const { f64 } = elements

/** Nodes of the table of the normal distribution per standard deviation, and how far it reaches. */
const PER_UNIT = 32
const REACH = 8.5
const NODES = 2 * REACH * PER_UNIT + 1

const DENSITY = new Float64Array(NODES)
const CUMULATIVE = new Float64Array(NODES)
for (let i = 0; i < NODES; i++) {
  const x = i / PER_UNIT - REACH
  const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI)
  DENSITY[i] = density
  CUMULATIVE[i] = x > 0 ? 1 - lowerTail(-x) : lowerTail(x)
}

/** For x at or below 0; the series loses its figures far out, where the continued fraction has them. */
function lowerTail(x: number): number {
  const density = Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI)
  if (x > -2) {
    let term = x
    let sum = x
    for (let n = 3; n < 80; n += 2) {
      term *= (x * x) / n
      sum += term
    }
    return 0.5 + density * sum
  }
  let fraction = 0
  for (let k = 120; k > 0; k--) fraction = k / (-x + fraction)
  return density / (-x + fraction)
}

/** Density of the standard normal distribution; to about 1e-11. */
export function normalDensity(x: number): number {
  if (x <= -REACH || x >= REACH) return 0
  const i = Math.round((x + REACH) * PER_UNIT)
  const at = i / PER_UNIT - REACH
  const h = x - at
  const e = -h * (at + 0.5 * h)
  return f64(DENSITY, i) * (1 + e * (1 + e * (0.5 + e * (1 / 6 + e * (1 / 24 + e / 120)))))
}

/**
 * Cumulative standard normal distribution; to about 1e-11.
 * Source: Abramowitz & Stegun 26.2.11 and 26.2.14 at the nodes, Taylor's series with the Hermite polynomials between.
 */
export function normalCumulative(x: number): number {
  if (x <= -REACH) return 0
  if (x >= REACH) return 1
  const i = Math.round((x + REACH) * PER_UNIT)
  const a = i / PER_UNIT - REACH
  const h = x - a
  const a2 = a * a
  const series =
    1 - h * (a / 2 - h * ((a2 - 1) / 6 - h * ((a * (a2 - 3)) / 24 - (h * (a2 * a2 - 6 * a2 + 3)) / 120)))
  return f64(CUMULATIVE, i) + f64(DENSITY, i) * h * series
}
