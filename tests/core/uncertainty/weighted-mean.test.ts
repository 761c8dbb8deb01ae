import { describe, expect, it } from 'vitest'
import { correlatedNumbers } from '../../../src/core/uncertainty/correlated.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { exact, measured, type Uncertain } from '../../../src/core/uncertainty/uncertain.ts'
import { weightedMean as meanBy, weighting } from '../../../src/core/uncertainty/weighted-mean.ts'

const { multiply, subtract } = FIRST_ORDER

const weightedMean = (values: Uncertain[]): Uncertain =>
  meanBy(weighting(values), FIRST_ORDER, (i) => values[i] as Uncertain)

describe('the weighted mean', () => {
  it('of independent values weighs by the inverse of the variance', () => {
    const mean = weightedMean([measured(10, 1, 'a'), measured(11, 2, 'b'), measured(9, 0.5, 'c')])
    const [wa, wb, wc] = [1, 1 / 4, 4]
    expect(mean.value).toBeCloseTo((10 * wa + 11 * wb + 9 * wc) / (wa + wb + wc), 9)
    expect(standardUncertainty(mean)).toBeCloseTo(1 / Math.sqrt(wa + wb + wc), 9)
  })

  it('of two correlated values is the textbook’s', () => {
    // w = (σ₂² − ρσ₁σ₂) / (σ₁² + σ₂² − 2ρσ₁σ₂), u² = σ₁²σ₂²(1 − ρ²) / (σ₁² + σ₂² − 2ρσ₁σ₂).
    // Beyond ρ = σ₁/σ₂ it would lie outside the two; see below.
    for (const rho of [-0.9, -0.3, 0, 0.4, 0.54]) {
      const [s1, s2] = [0.6, 1.1]
      const cross = rho * s1 * s2
      const pair = correlatedNumbers(
        [20, 20.4],
        [
          [s1 * s1, cross],
          [cross, s2 * s2],
        ],
        'both',
      )
      const mean = weightedMean(pair)
      const below = s1 * s1 + s2 * s2 - 2 * cross
      const w = (s2 * s2 - cross) / below
      expect(mean.value).toBeCloseTo(20 * w + 20.4 * (1 - w), 7)
      expect(standardUncertainty(mean)).toBeCloseTo(s1 * s2 * Math.sqrt((1 - rho * rho) / below), 7)
    }
  })

  it('of one value is that value, and of one value twice no better than it', () => {
    const x = measured(5, 0.2, 'x')
    expect(weightedMean([x]).value).toBe(5)
    expect(standardUncertainty(subtract(weightedMean([x]), x))).toBe(0)
    const twice = weightedMean([x, x])
    expect(twice.value).toBeCloseTo(5, 9)
    expect(standardUncertainty(twice)).toBeCloseTo(0.2, 6)
  })

  it('takes exact values before uncertain ones', () => {
    const mean = weightedMean([measured(4, 1, 'a'), exact(6), exact(6)])
    expect(mean.value).toBe(6)
    expect(standardUncertainty(mean)).toBe(0)
  })

  it('of nothing is refused', () => {
    expect(() => weightedMean([] as Uncertain[])).toThrow(/at least one value/)
  })

  it('never lies outside its evidence, whatever the values share', () => {
    const random = randomStream(11)
    for (let i = 0; i < 500; i++) {
      const scale = measured(1, 0.05, 'scale')
      const values = [0, 1, 2].map(() =>
        multiply(scale, measured(1000 + 5 * random.normal(), 2 + 4 * random.uniform(), 'own')),
      )
      const all = values.map((v) => v.value)
      const { value } = weightedMean(values)
      expect(value).toBeGreaterThanOrEqual(Math.min(...all) - 1e-9)
      expect(value).toBeLessThanOrEqual(Math.max(...all) + 1e-9)
    }
  })

  it('of values that differ far beyond their uncertainties is widened by their scatter', () => {
    const values = [measured(800, 1, 'a'), measured(812, 1, 'b')]
    const [mean, { excess }] = [weightedMean(values), weighting(values)]
    expect(mean.value).toBeCloseTo(806, 9)
    // Standard error of two values 12 apart: 12/2 with one degree of freedom.
    expect(standardUncertainty(excess)).toBeCloseTo(6, 9)
    expect(standardUncertainty(mean)).toBeCloseTo(Math.hypot(6, Math.SQRT1_2), 9)
    expect(standardUncertainty(weighting([measured(800, 1, 'a'), measured(801, 1, 'b')]).excess)).toBe(0)
  })
})
