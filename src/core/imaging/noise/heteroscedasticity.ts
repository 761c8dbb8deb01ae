import { BASIS, type ScoreContributions, VALUES } from './score-contributions.ts'

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
  taken: ArrayLike<number>,
): number {
  let seen = 0
  let even = 0
  for (let at = 0; at < n * VALUES; at += VALUES) {
    const weight = (values[at + 1 + pull] as number) ** 2
    if (weight === 0) continue
    let here = level
    for (let m = 0; m < BASIS; m++) here -= (taken[m] as number) * (values[at + 1 + m] as number) ** 2
    seen += weight * (values[at] as number) ** 2
    even += weight * here
  }
  return even > 0 ? seen / even : 1
}
