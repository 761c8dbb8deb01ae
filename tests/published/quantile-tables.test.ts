import { describe, expect, it } from 'vitest'
import { chiSquareExceeds, coverageFactor, studentExceeds } from '../../src/core/uncertainty/distributions.ts'

describe("Student's t as in JCGM 100:2008, table G.2", () => {
  // Read from memory: degrees of freedom, then t for 90, 95, 95.45, 99 and 99.73 %.
  const TABLE: [dof: number, ...t: string[]][] = [
    [1, '6.31', '12.71', '13.97', '63.66', '235.80'],
    [2, '2.92', '4.30', '4.53', '9.92', '19.21'],
    [3, '2.35', '3.18', '3.31', '5.84', '9.22'],
    [4, '2.13', '2.78', '2.87', '4.60', '6.62'],
    [5, '2.02', '2.57', '2.65', '4.03', '5.51'],
    [10, '1.81', '2.23', '2.28', '3.17', '3.96'],
    [20, '1.72', '2.09', '2.13', '2.85', '3.42'],
    [50, '1.68', '2.01', '2.05', '2.68', '3.16'],
    [100, '1.660', '1.984', '2.025', '2.626', '3.077'],
    [Number.POSITIVE_INFINITY, '1.645', '1.960', '2.000', '2.576', '3.000'],
  ]
  // 95.45 and 99.73 % are what the normal distribution holds within two and three standard deviations.
  const COVERAGE = [0.9, 0.95, 0.954499736, 0.99, 0.997300204]

  for (const [dof, ...row] of TABLE) {
    it(`for ${dof} degrees of freedom`, () => {
      const computed = row.map((t, i) =>
        coverageFactor(dof, COVERAGE[i]).toFixed(t.split('.')[1]?.length ?? 0),
      )
      expect(computed).toEqual(row)
    })
  }

  it('is exceeded with the probability it was computed for', () => {
    for (const dof of [1, 2, 3.7, 10, 100]) {
      expect(studentExceeds(coverageFactor(dof, 0.95), dof)).toBeCloseTo(0.05, 7)
    }
  })
})

describe('chi-square as in any table of its upper percentage points (values from memory)', () => {
  const TABLE: [dof: number, at5: number, at1: number][] = [
    [1, 3.841, 6.635],
    [2, 5.991, 9.21],
    [5, 11.07, 15.086],
    [10, 18.307, 23.209],
    [30, 43.773, 50.892],
  ]
  for (const [dof, at5, at1] of TABLE) {
    it(`exceeds ${at5} in 5 % and ${at1} in 1 % for ${dof} degrees of freedom`, () => {
      expect(chiSquareExceeds(at5, dof)).toBeCloseTo(0.05, 4)
      expect(chiSquareExceeds(at1, dof)).toBeCloseTo(0.01, 4)
    })
  }

  it('never gives a probability outside 0 to 1, however large the misfit', () => {
    for (const chi2 of [0, 1e-12, 50, 1e3, 1e6]) {
      const p = chiSquareExceeds(chi2, 3)
      expect(p).toBeGreaterThanOrEqual(0)
      expect(p).toBeLessThanOrEqual(1)
    }
  })
})
