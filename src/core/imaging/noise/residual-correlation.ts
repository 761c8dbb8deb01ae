import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { StripFit } from '../fit/strip-fit.ts'
import type { Strip } from '../strip/strip.ts'
import { hasTwoValues } from '../window/bilevel.ts'
import { type AutocovarianceSums, countRings, LAGS, NO_LAG, noSums, RINGS } from './autocovariance.ts'
import { heteroscedasticity } from './heteroscedasticity.ts'
import { CENTRE, scoreContributions, WIDTH } from './score-contributions.ts'

const { f64 } = elements

/** By how much the variances of centre and width exceed those of white noise. */
export interface Inflation {
  centre: number
  width: number
  /** The greater of both by the correlation alone, as if the noise were as strong everywhere. */
  even: number
}

/** Rings counted at first; more only when the correlation reaches through all of them. */
const FIRST_RINGS = 4

/**
 * Noise in a scan is not white after compression, blur or resampling: the residuals' own correlation between pixels up
 * to 8 px apart tells how much more (or less) uncertain a fit is than white noise would make it.
 * Source: sandwich estimator of variance, A⁻¹BA⁻¹ (Huber 1967; White 1980), with B from the correlation averaged over
 * the strip; the correlation that the fit itself puts into the residuals is taken off as in white noise.
 */
export function noiseInflation(strip: Strip, fit: StripFit, kept: readonly boolean[]): Inflation {
  const pulls = scoreContributions(strip, fit, kept, LAGS)
  if (pulls === null) return { centre: 1, width: 1, even: 1 }
  const sums = noSums()
  countRings(pulls, sums, FIRST_RINGS)
  let reach = significantReach(sums, fit.variance)
  if (reach === FIRST_RINGS - 1) {
    countRings(pulls, sums, LAGS + 1)
    reach = significantReach(sums, fit.variance)
  }
  const { covariance, taken } = takenOffReturned(sums, fit.variance, reach)
  const unsure = smallSample(covariance, reach, sums, pulls.n)
  const level = f64(covariance, NO_LAG)
  const within = (inflation: number) => Math.min(Math.max(inflation, 0.3), 60)
  const byCorrelation = (pull: Float64Array) =>
    (unsure * sumOver(pull, covariance, reach)) / f64(pull, NO_LAG) / fit.variance
  const centre = byCorrelation(sums.centre)
  const width = byCorrelation(sums.width)
  // A scan of one bit has all of its noise at the edges, and it is rounding, which evens out along them.
  const evened = hasTwoValues(strip.value)
  const uneven = (pull: number) => (evened ? 1 : heteroscedasticity(pulls, pull, level, taken))
  return {
    centre: within(centre * uneven(CENTRE)),
    width: within(width * uneven(WIDTH)),
    even: within(Math.max(centre, width)),
  }
}

/**
 * The correlation is itself only estimated, from as many independent values as there are pixels over the area of their
 * correlation (Bartlett 1946); a variance from ν of them is told as that of Student's t, ν/(ν − 2).
 */
function smallSample(covariance: Float64Array, reach: number, sums: AutocovarianceSums, n: number): number {
  if (reach === 0) return 1
  const area = sumOver(covariance, covariance, reach) / f64(covariance, NO_LAG) ** 2
  const taken = sums.projection.reduce((s, p) => s + f64(p, NO_LAG), 0)
  const freedoms = n / Math.max(area, 1) - taken / 2
  return freedoms > 5 ? freedoms / (freedoms - 2) : 5 / 3
}

/** Σ over all lags, both ways, of a pull's own correlation and the covariance of the noise. */
function sumOver(pull: Float64Array, covariance: Float64Array, reach: number): number {
  let sum = f64(pull, NO_LAG) * f64(covariance, NO_LAG)
  for (let ring = 1; ring <= reach; ring++) {
    for (const lag of RINGS[ring] ?? []) sum += 2 * f64(pull, lag) * f64(covariance, lag)
  }
  return sum
}

const ROUNDS = 4

/**
 * Covariance of the noise at each lag from that of the residuals: what each direction of the fit takes off is returned,
 * as large as the noise makes it in that direction, which its covariance tells, and so on until it stands.
 */
function takenOffReturned(
  sums: AutocovarianceSums,
  variance: number,
  reach: number,
): { covariance: Float64Array; taken: Float64Array } {
  const taken = new Float64Array(sums.projection.length).fill(variance)
  const covariance = new Float64Array(sums.residual.length)
  for (let round = 0; round < ROUNDS; round++) {
    for (let ring = 0; ring < sums.rings; ring++) {
      for (const lag of RINGS[ring] ?? []) {
        const n = f64(sums.count, lag)
        let sum = f64(sums.residual, lag)
        sums.projection.forEach((projection, m) => {
          sum += f64(taken, m) * f64(projection, lag)
        })
        covariance[lag] = n > 0 ? sum / n : 0
      }
    }
    sums.projection.forEach((p, m) => {
      const own = f64(p, NO_LAG)
      const here = own > 0 ? sumOver(p, covariance, reach) / own : variance
      taken[m] = Math.min(Math.max(here, 0.3 * variance), 60 * variance)
    })
  }
  return { covariance, taken }
}

/** The first ring of lags whose correlations together are no larger than those of white noise ends the reach. */
function significantReach(sums: AutocovarianceSums, variance: number): number {
  const { covariance } = takenOffReturned(sums, variance, sums.rings - 1)
  const level = f64(covariance, NO_LAG)
  for (let ring = 1; ring < sums.rings; ring++) {
    let sum = 0
    let n = 0
    for (const lag of RINGS[ring] ?? []) {
      const count = f64(sums.count, lag)
      if (!(count > 20)) continue
      sum += (f64(covariance, lag) / level) ** 2 * count
      n++
    }
    if (sum < n + 2.5 * Math.sqrt(2 * n)) return ring - 1
  }
  return sums.rings - 1
}
