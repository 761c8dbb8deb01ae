import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../src/core/formula/formula.ts'
import { regressionLine } from '../../src/core/geometry/regression-line.ts'
import { correlatedNumbers } from '../../src/core/uncertainty/correlated.ts'
import { correlation, standardUncertainty } from '../../src/core/uncertainty/covariance.ts'
import { effectiveDof, expand } from '../../src/core/uncertainty/coverage.ts'
import { coverageFactor } from '../../src/core/uncertainty/distributions.ts'
import { FIRST_ORDER } from '../../src/core/uncertainty/first-order.ts'
import { repeatedObservations } from '../../src/core/uncertainty/type-a.ts'
import { measured, type Uncertain } from '../../src/core/uncertainty/uncertain.ts'
import h2 from './data/gum-h2.json'
import h3 from './data/gum-h3.json'

const { add } = FIRST_ORDER

const sum = (terms: Uncertain[]): Uncertain => terms.reduce(add)
const mean = (values: number[]): number => values.reduce((s, v) => s + v, 0) / values.length

describe('JCGM 100:2008 H.1, calibration of an end gauge', () => {
  // Table H.1: contributions in nm with their degrees of freedom (25.6 and 50, 2 as the example works them out).
  const standard = measured(0, 25, 'calibration of the standard', { dof: 18 })
  const difference = measured(0, 9.7, 'measured difference', { dof: 25.6 })
  const expansion = measured(0, 2.9, 'difference of expansion coefficients', { dof: 50 })
  const temperature = measured(0, 16.6, 'difference of temperatures', { dof: 2 })
  const length = sum([standard, difference, expansion, temperature])

  it('combines to u = 32 nm', () => {
    expect(standardUncertainty(length).toFixed(0)).toBe('32')
  })

  it('has 16 effective degrees of freedom, rounded down', () => {
    expect(Math.floor(effectiveDof(length))).toBe(16)
  })

  it('has k = 2.92 and U = 93 nm at 99 %', () => {
    expect(coverageFactor(16, 0.99).toFixed(2)).toBe('2.92')
    // The example multiplies the rounded figures, 2.92 × 32 nm.
    expect((coverageFactor(16, 0.99) * 32).toFixed(0)).toBe('93')
    expect(expand(length, 0.99).k).toBeGreaterThan(coverageFactor(17, 0.99))
    expect(expand(length, 0.99).k).toBeLessThan(coverageFactor(16, 0.99))
  })

  it('has the measured difference of 9.7 nm with 25.6 degrees of freedom from 5.8, 3.9 and 6.7 nm', () => {
    // H.1.3.2 and H.1.6: 24, 5 and 8 degrees of freedom.
    const parts = sum([
      measured(215, 5.8, 'repeated observations', { dof: 24 }),
      measured(0, 3.9, 'random effects of the comparator', { dof: 5 }),
      measured(0, 6.7, 'systematic effects of the comparator', { dof: 8 }),
    ])
    const u = standardUncertainty(parts)
    expect(u.toFixed(1)).toBe('9.7')
    // The example puts the rounded 9.7 nm into Welch–Satterthwaite.
    expect((effectiveDof(parts) * (9.7 / u) ** 4).toFixed(1)).toBe('25.6')
  })
})

describe('JCGM 100:2008 H.2, simultaneous resistance and reactance', () => {
  // Means of five simultaneous observations with the covariance of the means, 5.2.3 eq. 17.
  const series = [h2.V_volt, h2.I_milliampere.map((i) => i / 1000), h2.phi_radian]
  const n = h2.V_volt.length
  const covariance = series.map((a) =>
    series.map((b) => {
      const [ma, mb] = [mean(a), mean(b)]
      return a.reduce((s, v, i) => s + (v - ma) * ((b[i] ?? 0) - mb), 0) / (n * (n - 1))
    }),
  )
  const [V, I, phi] = correlatedNumbers(series.map(mean), covariance, 'simultaneous observations', {
    dof: n - 1,
  }) as [Uncertain, Uncertain, Uncertain]
  const value = (text: string): Uncertain =>
    parseFormula(text).value((name) => ({ V, I, phi })[name] as Uncertain, FIRST_ORDER)
  const R = value('V / I * cos(phi)')
  const X = value('V / I * sin(phi)')
  const Z = value('V / I')

  it('has the means and their standard deviations of table H.2', () => {
    expect(V.value.toFixed(4)).toBe('4.9990')
    expect((1000 * I.value).toFixed(4)).toBe('19.6610')
    expect(phi.value.toFixed(5)).toBe('1.04446')
    expect(standardUncertainty(V).toFixed(4)).toBe('0.0032')
    expect((1000 * standardUncertainty(I)).toFixed(4)).toBe('0.0095')
    expect(standardUncertainty(phi).toFixed(5)).toBe('0.00075')
    expect(repeatedObservations(h2.V_volt).s / Math.sqrt(n)).toBeCloseTo(standardUncertainty(V), 12)
  })

  it('has the correlations of table H.2: −0.36, 0.86 and −0.65', () => {
    expect(correlation(V, I).toFixed(2)).toBe('-0.36')
    expect(correlation(V, phi).toFixed(2)).toBe('0.86')
    expect(correlation(I, phi).toFixed(2)).toBe('-0.65')
  })

  it('gives R = 127.732 Ω, u 0.071', () => {
    expect(R.value.toFixed(3)).toBe('127.732')
    expect(standardUncertainty(R).toFixed(3)).toBe('0.071')
  })

  it('gives X = 219.847 Ω, u 0.295', () => {
    expect(X.value.toFixed(3)).toBe('219.847')
    // 0.29558 unrounded: the table prints 0.295, a unit of the last digit less than it rounds to.
    expect(Math.abs(standardUncertainty(X) - 0.295)).toBeLessThan(0.001)
    expect(standardUncertainty(X).toFixed(4)).toBe('0.2956')
  })

  it('gives Z = 254.260 Ω, u 0.236', () => {
    expect(Z.value.toFixed(3)).toBe('254.260')
    expect(standardUncertainty(Z).toFixed(3)).toBe('0.236')
  })

  it('correlates R, X and Z by −0.588, −0.485 and 0.993', () => {
    expect(correlation(R, X).toFixed(3)).toBe('-0.588')
    expect(correlation(R, Z).toFixed(3)).toBe('-0.485')
    expect(correlation(X, Z).toFixed(3)).toBe('0.993')
  })

  it('rests on four degrees of freedom in all three, since all come from the same five observations', () => {
    for (const x of [R, X, Z]) expect(effectiveDof(x)).toBeCloseTo(4, 9)
  })
})

describe('JCGM 100:2008 H.3, calibration of a thermometer by a straight line', () => {
  const line = regressionLine(
    h3.t_celsius.map((t) => t - h3.t0),
    h3.b_celsius,
  )

  it('gives the intercept −0.1712 °C, u 0.0029 °C', () => {
    expect(line.intercept.value.toFixed(4)).toBe('-0.1712')
    expect(standardUncertainty(line.intercept).toFixed(4)).toBe('0.0029')
  })

  it('gives the slope 0.00218, u 0.00067', () => {
    expect(line.slope.value.toFixed(5)).toBe('0.00218')
    expect(standardUncertainty(line.slope).toFixed(5)).toBe('0.00067')
  })

  it('correlates them by −0.930 and leaves s = 0.0035 °C', () => {
    expect(correlation(line.intercept, line.slope).toFixed(3)).toBe('-0.930')
    expect(line.s.toFixed(4)).toBe('0.0035')
  })

  it('gives the correction at 30 °C: −0.1494 °C, u 0.0041 °C, 9 degrees of freedom', () => {
    const at30 = line.at(30 - h3.t0)
    expect(at30.value.toFixed(4)).toBe('-0.1494')
    expect(standardUncertainty(at30).toFixed(4)).toBe('0.0041')
    expect(effectiveDof(at30)).toBeCloseTo(9, 9)
  })
})

describe('JCGM 100:2008 G.4.1, effective degrees of freedom of a product', () => {
  const relative = sum([
    measured(0, 0.25, 'x1', { dof: 9 }),
    measured(0, 0.57, 'x2', { dof: 4 }),
    measured(0, 0.82, 'x3', { dof: 14 }),
  ])

  it('combines relative uncertainties of 0.25, 0.57 and 0.82 % to 1.03 %', () => {
    expect(standardUncertainty(relative).toFixed(2)).toBe('1.03')
  })

  it('has 19.0 effective degrees of freedom and t at 95 % of 2.09', () => {
    expect(effectiveDof(relative).toFixed(1)).toBe('19.0')
    expect(coverageFactor(effectiveDof(relative)).toFixed(2)).toBe('2.09')
  })
})
