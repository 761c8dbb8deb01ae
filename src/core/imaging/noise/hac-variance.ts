/**
 * Variance of the residuals of neighbours along a curve as if they were independent: where those next to one another
 * clearly go together they count as fewer (heteroscedasticity- and autocorrelation-consistent; Newey & West 1987,
 * Bartlett's weights).
 * @param residuals in order along the curve; freedoms: their number less what was fitted, above 0
 */
export function hacVariance(residuals: readonly number[], freedoms: number): number {
  const squares = residuals.reduce((s, r) => s + r * r, 0)
  return (squares / freedoms) * together(residuals, squares)
}

/** 1 + 2Σ of the weighted correlations of neighbours, when the first is significant. */
function together(residuals: readonly number[], squares: number): number {
  const n = residuals.length
  const correlation = (lag: number) => {
    const sum = residuals.slice(lag).reduce((s, r, i) => s + r * (residuals[i] ?? 0), 0)
    return squares > 0 ? sum / squares : 0
  }
  if (n < 8 || correlation(1) < 2 / Math.sqrt(n)) return 1
  const lags = Math.max(1, Math.min(12, Math.floor(n / 5)))
  let sum = 1
  for (let lag = 1; lag <= lags; lag++) sum += 2 * (1 - lag / (lags + 1)) * correlation(lag)
  return Math.max(1, sum)
}
