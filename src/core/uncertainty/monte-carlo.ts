import { element } from '../linear-algebra/element.ts'
import { type RandomStream, randomStream } from './random.ts'

/** What the trials of a Monte Carlo came to, in the unit of the model's output. */
export interface MonteCarloResult {
  trials: number
  mean: number
  /** Standard deviation of the trials. */
  u: number
  /** Probabilistically symmetric coverage interval. */
  low: number
  high: number
}

/**
 * Propagation of distributions by Monte Carlo.
 * @param model draws its inputs from the stream and returns one value of the output
 * @param options trials (default 100 000), seed, coverage (default 0.95)
 * Source: JCGM 101:2008, clause 7; the interval by 7.7.2.
 */
export function monteCarlo(
  model: (random: RandomStream) => number,
  options: { trials?: number; seed: number; coverage?: number },
): MonteCarloResult {
  const { trials = 100_000, seed, coverage = 0.95 } = options
  if (!(trials >= 100)) throw new RangeError(`Monte Carlo needs at least 100 trials, not ${trials}.`)
  const random = randomStream(seed)
  const values = new Float64Array(trials)
  for (let i = 0; i < trials; i++) values[i] = model(random)
  values.sort()
  const mean = values.reduce((s, v) => s + v, 0) / trials
  const squares = values.reduce((s, v) => s + (v - mean) ** 2, 0)
  const q = Math.round(coverage * trials)
  const r = Math.round((trials - q) / 2)
  return {
    trials,
    mean,
    u: Math.sqrt(squares / (trials - 1)),
    low: element(values, r),
    high: element(values, Math.min(r + q, trials - 1)),
  }
}

/** How a first-order interval compares with the one by Monte Carlo, in the unit of the value. */
export interface Verdict {
  /** Both ends of the first-order interval lie within `tolerance` of the Monte Carlo ones. */
  firstOrderIsGoodEnough: boolean
  /** Numerical tolerance δ of u. */
  tolerance: number
  lowDifference: number
  highDifference: number
}

/**
 * Whether the first-order interval value ± U is confirmed by Monte Carlo.
 * @param digits significant digits of u that matter, 1 or 2
 * Source: JCGM 101:2008, 7.9.2 (δ) and 8.1.3, eq. 21 and 22.
 */
export function compareWithFirstOrder(
  firstOrder: { value: number; u: number; U: number },
  simulated: MonteCarloResult,
  digits: 1 | 2 = 1,
): Verdict {
  const exponent = Math.floor(Math.log10(firstOrder.u)) - (digits - 1)
  const tolerance = 0.5 * 10 ** exponent
  const lowDifference = Math.abs(firstOrder.value - firstOrder.U - simulated.low)
  const highDifference = Math.abs(firstOrder.value + firstOrder.U - simulated.high)
  return {
    firstOrderIsGoodEnough: lowDifference <= tolerance && highDifference <= tolerance,
    tolerance,
    lowDifference,
    highDifference,
  }
}
