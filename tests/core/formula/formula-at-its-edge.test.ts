import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../../src/core/formula/formula.ts'

import type { QuantityKind } from '../../../src/core/quantity/quantity-kind.ts'
import { FIRST_ORDER } from '../../../src/core/uncertainty/first-order.ts'

import { exact } from '../../../src/core/uncertainty/uncertain.ts'
import { derived, dimension, rowOf, scaled, smallJob } from '../ledger/small-job.ts'

/** `base` and `leg` are both 10 in, scaled between one and the same two marks. */
const resultOf = (kind: QuantityKind, formula: string) =>
  rowOf(
    smallJob({
      dimensions: [
        dimension('base', [scaled(['A', 'C'])]),
        dimension('leg', [scaled(['A', 'C'])]),
        dimension('result', [derived(formula)], { kind }),
      ],
    }),
    'result',
  )

describe('a derived formula at the edge of where it has a value', () => {
  it.each([
    ['angle', 'acos(10 in / leg)', /has no uncertainty at these dimensions/],
    ['length', 'base^2 / (base - leg)', /has no value for these dimensions/],
  ] as const)('leaves the row open and says why: %s, %s', (kind, formula, says) => {
    const row = resultOf(kind, formula)
    expect(row.value).toBeNull()
    expect(row.status).toBe('open')
    expect(row.evidence[0]?.problem).toMatch(says)
    expect(row.budget).toEqual([])
  })

  it('is an ordinary row beside it', () => {
    const row = resultOf('angle', 'acos(5 in / leg)')
    expect(row.value).toBeCloseTo(60, 9)
    expect(row.u).toBeGreaterThan(0)
    expect(Number.isFinite(row.U)).toBe(true)
  })

  it('has the cube root of a negative number', () => {
    expect(parseFormula('cbrt(-8)').value(() => exact(0), FIRST_ORDER).value).toBe(-2)
  })
})
