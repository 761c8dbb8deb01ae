import { describe, expect, it } from 'vitest'
import { uncertaintyBudget } from '../../../src/core/uncertainty/budget.ts'
import { effectiveDof, expand } from '../../../src/core/uncertainty/coverage.ts'
import { NORMAL_95 } from '../../../src/core/uncertainty/distributions.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'
import { exact, measured, type Uncertain } from '../../../src/core/uncertainty/uncertain.ts'

const { add, scale } = FIRST_ORDER

const sum = (...terms: Uncertain[]): Uncertain => terms.reduce(add)

describe('effective degrees of freedom (JCGM 100:2008, G.4)', () => {
  it('add contributions of one estimate of variance before squaring', () => {
    const shared = { dof: 8 }
    const two = sum(measured(0, 3, 'x of a point', shared), measured(0, 4, 'y of a point', shared))
    expect(effectiveDof(two)).toBeCloseTo(8, 12)
    const apart = sum(measured(0, 3, 'x', { dof: 8 }), measured(0, 4, 'y', { dof: 8 }))
    expect(effectiveDof(apart)).toBeCloseTo(625 / (81 / 8 + 256 / 8), 12)
    const withKnown = sum(two, measured(0, 5, 'known'))
    expect(effectiveDof(withKnown)).toBeCloseTo((50 * 50) / ((25 * 25) / 8), 10)
  })

  it('are those of the only source, however it is scaled', () => {
    const x = measured(3, 0.2, 'five readings', { dof: 4 })
    expect(effectiveDof(scale(x, -17))).toBeCloseTo(4, 12)
    expect(effectiveDof(add(x, x))).toBeCloseTo(4, 12)
  })

  it('are infinite for known variances and for exact numbers, with k = 1.96', () => {
    expect(effectiveDof(measured(3, 0.2, 'known'))).toBe(Number.POSITIVE_INFINITY)
    expect(expand(measured(3, 0.2, 'known')).k).toBe(NORMAL_95)
    const none = expand(exact(3))
    expect([none.u, none.U]).toEqual([0, 0])
  })

  it('make U of five readings 2.776 times u (t, 4 degrees of freedom; JCGM 100:2008, table G.2)', () => {
    const { U, k } = expand(measured(3, 0.2, 'five readings', { dof: 4 }))
    expect(k).toBeCloseTo(2.776, 3)
    expect(U).toBeCloseTo(0.5553, 4)
  })
})

describe('the uncertainty budget', () => {
  it('has shares that sum to 1, largest first, one a label', () => {
    const x = sum(
      measured(0, 1, 'picking of A'),
      measured(0, 2, 'picking of A'),
      measured(0, 3, 'stated size'),
      measured(0, 0.5, 'draughting'),
    )
    const budget = uncertaintyBudget(x)
    expect(budget.map((c) => c.source)).toEqual(['stated size', 'picking of A', 'draughting'])
    expect(budget.reduce((s, c) => s + c.share, 0)).toBeCloseTo(1, 14)
    expect(budget[0]?.share).toBeCloseTo(9 / 14.25, 14)
    expect(budget[1]?.share).toBeCloseTo(5 / 14.25, 14)
  })

  it('is empty for an exact number and for one whose errors cancel', () => {
    expect(uncertaintyBudget(exact(4))).toEqual([])
    const x = measured(4, 1, 'x')
    expect(uncertaintyBudget(add(x, scale(x, -1)))).toEqual([])
  })
})
