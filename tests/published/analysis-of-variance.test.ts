import { describe, expect, it } from 'vitest'
import { differ, groupedObservations } from '../../src/core/uncertainty/analysis-of-variance.ts'
import { matchingDigits } from './matching-digits.ts'

/** Five numbers with this mean and experimental standard deviation. */
const fiveWith = (mean: number, s: number): [number][] =>
  [-2, -1, 0, 1, 2].map((i) => [mean + (s * i) / Math.sqrt(2.5)])

describe('JCGM 100:2008 H.5, analysis of variance of a Zener voltage standard', () => {
  // Table H.9: ten days, five observations a day; mean less 10 V and standard deviation of each day, microvolts.
  const means = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41]
  const deviations = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86]
  const days = means.map((mean, day) => fiveWith(mean, deviations[day] ?? 0))
  const told = groupedObservations(days)

  it('has a mean of 10.000 097 V, 57 µV between the means of days and 85 µV within a day', () => {
    expect(told.mean[0]?.toFixed(0)).toBe('97')
    expect((told.u * Math.sqrt(10)).toFixed(0)).toBe('57')
    expect(told.sWithin?.toFixed(0)).toBe('85')
  })

  it('has F = 2.25 with 9 and 40 degrees of freedom, significant at 5 % and not at 2.5 %', () => {
    // H.5.2.2, eq. H.27: F = 5 (57 µV)²/(85 µV)² of the rounded figures.
    expect([told.between.dof, told.within.dof]).toEqual([9, 40])
    expect(told.f).toBeGreaterThan(2.25 - 0.02)
    expect(told.f).toBeLessThan(2.25 + 0.02)
    expect(differ(told)).toBe(true)
    expect(told.p).toBeGreaterThan(0.025)
  })

  it('has u = 18 µV with 9 degrees of freedom by the means of the days', () => {
    expect([told.u.toFixed(0), told.dof, told.by]).toEqual(['18', 9, 'groups'])
  })

  it('has a standard deviation of 43 µV between days, and would have u = 13 µV with 49 degrees of freedom as one', () => {
    // H.5.2.3 and H.5.2.5, eq. H.28; these two figures from memory.
    expect(told.sBetween?.toFixed(0)).toBe('43')
    expect((told.s / Math.sqrt(50)).toFixed(0)).toBe('13')
  })
})

describe('NIST StRD, analysis of variance, SiRstv: resistivity of silicon wafers by five instruments', () => {
  const readings = [
    [196.3052, 196.124, 196.189, 196.2569, 196.3403],
    [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
    [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
    [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
    [196.2119, 196.1051, 196.185, 196.0052, 196.209],
  ]
  const told = groupedObservations(readings.map((own) => own.map((reading) => [reading])))

  it('agrees with the certified values, lower average difficulty, to nine digits and more', () => {
    expect(matchingDigits(told.between.squares, 5.11462616e-2)).toBeGreaterThan(9)
    expect(matchingDigits(told.within.squares, 2.1663656e-1)).toBeGreaterThan(9)
    expect(matchingDigits(told.f ?? 0, 1.18046237440224)).toBeGreaterThan(9)
    expect(matchingDigits(told.sWithin ?? 0, 1.04076068334656e-1)).toBeGreaterThan(9)
  })
})
