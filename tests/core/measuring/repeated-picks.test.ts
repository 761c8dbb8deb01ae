import { describe, expect, it } from 'vitest'
import { calibrate } from '../../../src/core/calibration/calibrate.ts'
import { measureFeatures } from '../../../src/core/measuring/measure-features.ts'
import { standardUncertainty } from '../../../src/core/uncertainty/covariance.ts'
import { effectiveDof, expand } from '../../../src/core/uncertainty/coverage.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import type { Uncertain } from '../../../src/core/uncertainty/uncertain.ts'
import { lengthReference, pointMark, repeatedPoint, viewOf, type XY } from './marks.ts'

const reference = lengthReference('R1', [0, 0], [4000, 0], 400, 0, 0)
const exactView = calibrate(viewOf('uniform', reference), reference)
const distance = (p: [XY, ...XY[]], q: [XY, ...XY[]]): Uncertain =>
  measureFeatures(exactView, 'distance', [repeatedPoint('P', p), repeatedPoint('Q', q)])

describe('repeated picks of a point give its uncertainty by their scatter (Type A)', () => {
  it('the point is their mean, u = s/√n of both coordinates together, with 2(n − 1) degrees of freedom', () => {
    const picks: [XY, ...XY[]] = [
      [1000, 500],
      [1002, 499],
      [1001, 504],
    ]
    const x = measureFeatures(exactView, 'distance', [pointMark('O', [0, 501], 0), repeatedPoint('P', picks)])
    // x: mean 1001, s² = 1; y: mean 501, s² = 7; together s² = 4.
    expect(x.value).toBeCloseTo(100.1, 9)
    expect(standardUncertainty(x)).toBeCloseTo(0.1 * (2 / Math.sqrt(3)), 7)
    expect(effectiveDof(x)).toBeCloseTo(4, 6)
    // t for 4 degrees of freedom, 2.776 (JCGM 100:2008, table G.2).
    expect(expand(x).k).toBeCloseTo(2.776, 3)
  })

  it('repeats that agree to the last digit, and no repeats, leave the stated sigma', () => {
    const one = distance([[0, 0]], [[500, 0]])
    expect(standardUncertainty(one)).toBeCloseTo(0.1 * Math.SQRT2, 8)
    expect(effectiveDof(one)).toBe(Number.POSITIVE_INFINITY)
    const same = distance(
      [[0, 0]],
      [
        [500, 0],
        [500, 0],
        [500, 0],
      ],
    )
    expect(standardUncertainty(same)).toBeCloseTo(0.1 * Math.sqrt(1 + 1 / 3), 8)
  })

  it('the 95 % interval of a distance between points picked three times holds the truth in 94 to 96 %', () => {
    const random = randomStream(1908)
    const sheets = 12_000
    let [held, heldIfKnown] = [0, 0]
    for (let i = 0; i < sheets; i++) {
      const sigma = 0.5 + 2 * random.uniform()
      const pick = (x: number, y: number): XY => [x + sigma * random.normal(), y + sigma * random.normal()]
      const thrice = (x: number, y: number): [XY, XY, XY] => [pick(x, y), pick(x, y), pick(x, y)]
      const d = distance(thrice(300, 400), thrice(1800, 2400))
      const error = Math.abs(d.value - 250)
      const { u, U } = expand(d)
      if (error <= U) held++
      if (error <= 1.96 * u) heldIfKnown++
    }
    console.log(
      `three picks: held ${((100 * held) / sheets).toFixed(1)} % with t, ${((100 * heldIfKnown) / sheets).toFixed(1)} % with k = 1.96`,
    )
    expect(held / sheets).toBeGreaterThan(0.94)
    expect(held / sheets).toBeLessThan(0.96)
    expect(heldIfKnown / sheets).toBeLessThan(0.94)
  })
})
