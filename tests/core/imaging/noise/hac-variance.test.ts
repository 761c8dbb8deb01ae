import { describe, expect, it } from 'vitest'
import { hacVariance } from '../../../../src/core/imaging/noise/hac-variance.ts'

describe('the variance of residuals along a curve', () => {
  it('is their mean square where neighbours do not go together', () => {
    expect(hacVariance([1, -1, 1, -1, 1, -1, 1, -1, 1, -1], 8)).toBeCloseTo(10 / 8, 12)
  })

  it('is the mean square of few, however they go together', () => {
    expect(hacVariance([1, 1, 1, -1, -1, -1], 4)).toBeCloseTo(6 / 4, 12)
  })

  it('is more where neighbours go together, by the correlations weighted as Bartlett does', () => {
    // Squares 10; products of neighbours 1+1+1+1−1+1+1+1+1 = 7, of next but one 1+1+1−1−1+1+1+1 = 4; two lags of ten.
    const residuals = [1, 1, 1, 1, 1, -1, -1, -1, -1, -1]
    const together = 1 + 2 * ((2 / 3) * (7 / 10) + (1 / 3) * (4 / 10))
    expect(hacVariance(residuals, 8)).toBeCloseTo((10 / 8) * together, 12)
  })
})
