import { describe, expect, it } from 'vitest'
import { normalisedResiduals, SUSPECT_ABOVE } from '../../../src/core/calibration/data-snooping.ts'
import { distanceReference, type StatedSize } from '../../../src/core/calibration/reference.ts'
import { solveMapping } from '../../../src/core/calibration/solve-mapping.ts'
import type { MappingKind } from '../../../src/core/job/model/types.ts'
import type { Feature } from '../../../src/core/measuring/features/feature-of-mark.ts'
import { chiSquareExceeds } from '../../../src/core/uncertainty/distributions.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { measured } from '../../../src/core/uncertainty/uncertain.ts'
import { pointMark, viewOf, type XY } from '../measuring/marks.ts'
import { sevenReferences } from './seven-references.ts'

const SHEETS = 4000

/** Share of a standard normal variable below each quarter point. */
const QUARTERS = [-0.6744897501960817, 0, 0.6744897501960817]

describe.each(['uniform', 'two-axis', 'affine'] as MappingKind[])(
  'over 4,000 sheets without a slip, seven references and a %s mapping',
  (kind) => {
    const random = randomStream(1968)
    const w: number[] = []
    const chi2: number[] = []
    let dof = 0
    for (let i = 0; i < SHEETS; i++) {
      const sizes = sevenReferences(random)
      const solution = solveMapping(viewOf(kind, sizes), sizes)
      w.push(...normalisedResiduals(sizes, solution))
      chi2.push(solution.chi2)
      dof = solution.dof
    }
    const mean = (values: number[]): number => values.reduce((s, v) => s + v, 0) / values.length
    const alarms = w.filter((v) => Math.abs(v) > SUSPECT_ABOVE).length / w.length
    const misfits = chi2.filter((c) => chiSquareExceeds(c, dof) < 0.05).length / SHEETS
    console.log(
      `${kind}: w mean ${mean(w).toFixed(3)}, variance ${mean(w.map((v) => v * v)).toFixed(3)}, ` +
        `|w| > 3.29 in ${(100 * alarms).toFixed(2)} %, chi-square mean ${mean(chi2).toFixed(2)} for ${dof}, ` +
        `p < 0.05 in ${(100 * misfits).toFixed(1)} %`,
    )

    it('w has mean 0 and variance 1', () => {
      expect(Math.abs(mean(w))).toBeLessThan(0.03)
      // The seven of a sheet are correlated; of 4,000 sheets alone the variance is known to 2.2 %.
      expect(Math.abs(mean(w.map((v) => v * v)) - 1)).toBeLessThan(0.05)
    })

    it('w has the quarters of the normal distribution', () => {
      QUARTERS.forEach((q, i) => {
        const below = w.filter((v) => v < q).length / w.length
        expect(Math.abs(below - (i + 1) / 4)).toBeLessThan(0.015)
      })
    })

    it('|w| > 3.29 is a false alarm in about one of a thousand', () => {
      // 28 expected among 28,000; three standard deviations of a count of 28 are 16.
      expect(alarms * w.length).toBeGreaterThan(12)
      expect(alarms * w.length).toBeLessThan(44)
    })

    it('chi-square has its degrees of freedom for a mean, within three standard deviations', () => {
      const deviation = Math.sqrt((2 * dof) / SHEETS)
      expect(Math.abs(mean(chi2) - dof)).toBeLessThan(3 * deviation)
    })

    it('p is below 0.05 in one of twenty', () => {
      expect(Math.abs(misfits - 0.05)).toBeLessThan(3 * Math.sqrt((0.05 * 0.95) / SHEETS))
    })
  },
)

describe('over 4,000 sheets with six references between the same four marks', () => {
  const random = randomStream(1935)
  const corners: XY[] = [
    [300, 300],
    [2300, 350],
    [2250, 1500],
    [350, 1450],
  ]
  const pairs: [number, number][] = [
    [0, 1],
    [1, 2],
    [2, 3],
    [3, 0],
    [0, 2],
    [1, 3],
  ]
  const w: number[] = []
  const chi2: number[] = []
  for (let i = 0; i < SHEETS; i++) {
    const marks = corners.map(([x, y], k) => pointMark(`M${k}`, [x + random.normal(), y + random.normal()]))
    const sizes = pairs.flatMap(([a, b], k): StatedSize[] => {
      const [p, q] = [corners[a] as XY, corners[b] as XY]
      const size = 0.1 * Math.hypot(q[0] - p[0], q[1] - p[1]) + 0.03 * random.normal()
      return distanceReference(
        `R${k}`,
        marks[a] as Feature,
        marks[b] as Feature,
        measured(size, 0.03, 'stated size'),
      )
    })
    const solution = solveMapping(viewOf('uniform', sizes), sizes)
    w.push(...normalisedResiduals(sizes, solution))
    chi2.push(solution.chi2)
  }
  const mean = (values: number[]): number => values.reduce((s, v) => s + v, 0) / values.length
  const misfits = chi2.filter((c) => chiSquareExceeds(c, 5) < 0.05).length / SHEETS
  console.log(
    `shared marks: w variance ${mean(w.map((v) => v * v)).toFixed(3)}, chi-square mean ${mean(chi2).toFixed(2)} for 5, ` +
      `p < 0.05 in ${(100 * misfits).toFixed(1)} %`,
  )

  it('what the marks share is not taken for agreement or misfit: chi-square and w are as they should be', () => {
    expect(Math.abs(mean(chi2) - 5)).toBeLessThan(3 * Math.sqrt(10 / SHEETS))
    expect(Math.abs(mean(w.map((v) => v * v)) - 1)).toBeLessThan(0.06)
    expect(Math.abs(misfits - 0.05)).toBeLessThan(3 * Math.sqrt((0.05 * 0.95) / SHEETS))
  })
})
