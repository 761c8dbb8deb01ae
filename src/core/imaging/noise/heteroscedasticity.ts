import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { BASIS, type ScoreContributions, VALUES } from './score-contributions.ts'

const { f64 } = elements

/**
 * By how much the noise is stronger where the pixels pull on what is fitted than on the average of the strip: the ink's
 * edges tremble, JPEG rings about them, and where ground or ink lie at the end of the grey scale the noise shows at the
 * edges alone.
 * Source: White 1980, A heteroskedasticity-consistent covariance matrix estimator, Econometrica 48: residuals squared,
 * weighted with the pull squared; over what even noise would give, less what the fit takes off.
 * @param pull which of the directions of the fit; level: variance of the noise on the average; taken: its variance in
 * each direction
 */
export function heteroscedasticity(
  { n, values }: ScoreContributions,
  pull: number,
  level: number,
  taken: Float64Array,
): number {
  let seen = 0
  let even = 0
  for (let at = 0; at < n * VALUES; at += VALUES) {
    const weight = f64(values, at + 1 + pull) ** 2
    if (weight === 0) continue
    let here = level
    for (let m = 0; m < BASIS; m++) here -= f64(taken, m) * f64(values, at + 1 + m) ** 2
    seen += weight * f64(values, at) ** 2
    even += weight * here
  }
  return even > 0 ? seen / even : 1
}
