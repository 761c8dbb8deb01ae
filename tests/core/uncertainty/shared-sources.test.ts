import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { distanceReference } from '../../../src/core/calibration/reference.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { uncertaintyBudget } from '../../../src/core/uncertainty/budget.ts'
import { correlation, covariance, standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'
import { exact, fromTerms, measured } from '../../../src/core/uncertainty/uncertain.ts'
import { pointMark, viewOf } from '../measuring/marks.ts'

const { add, divide, scale, subtract } = FIRST_ORDER

describe('numbers that share a source of error', () => {
  const x = measured(12.5, 0.3, 'caliper')
  const y = measured(7, 0.4, 'rule')

  it('make x − x exactly 0 with u exactly 0, and x / x exactly 1', () => {
    const none = subtract(x, x)
    expect(none.value).toBe(0)
    expect(standardUncertainty(none)).toBe(0)
    const one = divide(x, x)
    expect(one.value).toBe(1)
    expect(standardUncertainty(one)).toBeCloseTo(0, 16)
  })

  it('add linearly where the source is the same and in squares where it is not', () => {
    expect(standardUncertainty(add(x, x))).toBeCloseTo(0.6, 14)
    expect(standardUncertainty(add(x, y))).toBeCloseTo(0.5, 14)
    expect(standardUncertainty(subtract(add(x, y), x))).toBeCloseTo(0.4, 14)
    expect(standardUncertainty(subtract(scale(x, 3), add(x, x)))).toBeCloseTo(0.3, 14)
  })

  it('are correlated exactly as far as they share it', () => {
    const z = add(x, y)
    expect(covariance(x, z)).toBeCloseTo(0.09, 14)
    expect(covariance(z, x)).toBeCloseTo(0.09, 14)
    expect(correlation(x, z)).toBeCloseTo(0.6, 14)
    expect(correlation(x, y)).toBe(0)
    expect(correlation(x, exact(3))).toBe(0)
  })

  it('count a source named twice, in any order, with the sum of its coefficients', () => {
    const [s] = x.sources
    const [t] = y.sources
    if (s === undefined || t === undefined) throw new Error('a measured number has a source')
    const mixed = fromTerms(1, [t, s, t], [0.3, 0.2, 0.1])
    expect(standardUncertainty(mixed)).toBeCloseTo(Math.hypot(0.4, 0.2), 14)
    expect(covariance(mixed, y)).toBeCloseTo(0.4 * 0.4, 14)
  })
})

describe('the ratio of two lengths in one view', () => {
  const stated = measured(500, 5, 'size stated for figured size R1')
  const sizes = distanceReference(
    'R1',
    pointMark('A', [100, 100], 0.2),
    pointMark('B', [2100, 130], 0.2),
    stated,
  )
  const calibration = calibrate(viewOf('uniform', sizes, 0.1), sizes)
  const length = measureFeatures(calibration, 'distance', [pointMark('C', [0, 0]), pointMark('D', [900, 0])])
  const height = measureFeatures(calibration, 'distance', [pointMark('E', [0, 0]), pointMark('F', [0, 700])])
  const share = (x: typeof length, source: string): number =>
    uncertaintyBudget(x).find((c) => c.source === source)?.share ?? 0

  it('does not carry the uncertainty of the scale, which both lengths carry nearly alone', () => {
    expect(share(length, 'size stated for figured size R1')).toBeGreaterThan(0.9)
    expect(correlation(length, height)).toBeGreaterThan(0.9)
    const ratio = divide(length, height)
    expect(share(ratio, 'size stated for figured size R1')).toBeLessThan(1e-20)
    expect(share(ratio, 'picking of A')).toBeLessThan(1e-20)
    const relative = (x: typeof length): number => standardUncertainty(x) / x.value
    expect(relative(length)).toBeGreaterThan(0.01)
    // Picks of 1 px at four ends and the drawing remain.
    expect(relative(ratio)).toBeLessThan(0.003)
  })
})
