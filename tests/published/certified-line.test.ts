import { describe, expect, it } from 'vitest'
import { regressionLine } from '../../src/core/geometry/regression-line.ts'
import { standardUncertainty } from '../../src/core/uncertainty/covariance.ts'
import norris from './data/norris.json'
import { matchingDigits } from './matching-digits.ts'

/** NIST Statistical Reference Datasets, linear regression, Norris: certified values. */
const CERTIFIED = {
  intercept: -0.262323073774029,
  slope: 1.00211681802045,
  'standard deviation of the intercept': 0.232818234301152,
  'standard deviation of the slope': 0.429796848199937e-3,
  'residual standard deviation': 0.884796396144373,
}

describe('the certified straight line of NIST StRD, Norris', () => {
  const line = regressionLine(norris.x, norris.y)
  const computed: Record<keyof typeof CERTIFIED, number> = {
    intercept: line.intercept.value,
    slope: line.slope.value,
    'standard deviation of the intercept': standardUncertainty(line.intercept),
    'standard deviation of the slope': standardUncertainty(line.slope),
    'residual standard deviation': line.s,
  }
  const names = Object.keys(CERTIFIED) as (keyof typeof CERTIFIED)[]
  const digits = names.map((name) => matchingDigits(computed[name], CERTIFIED[name]))
  console.log(`Norris, matching digits: ${names.map((n, i) => `${n} ${digits[i]?.toFixed(1)}`).join(', ')}`)

  names.forEach((name, i) => {
    it(`gives the ${name} to ten significant digits or more`, () => {
      expect(digits[i]).toBeGreaterThanOrEqual(10)
    })
  })

  it('rests on 36 pairs, so on 34 degrees of freedom', () => {
    expect(line.dof).toBe(34)
  })
})
