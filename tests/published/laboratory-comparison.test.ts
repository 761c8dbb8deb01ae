import { describe, expect, it } from 'vitest'
import { NORMAL_95 } from '../../src/core/uncertainty/distributions.ts'
import { FIRST_ORDER } from '../../src/core/uncertainty/first-order.ts'
import { BEYOND_DOUBT, normalisedError } from '../../src/core/uncertainty/normalised-error.ts'
import { exact, measured } from '../../src/core/uncertainty/uncertain.ts'

const { add } = FIRST_ORDER

describe('E_n of ISO/IEC 17043: |x − X| / √(U² + U²)', () => {
  it('is the difference over the root of the summed squares of the expanded uncertainties', () => {
    // U = 0.3 and 0.4 mm, so √(U² + U²) = 0.5 mm.
    const laboratory = measured(100.25, 0.3 / NORMAL_95, 'laboratory')
    const reference = measured(100, 0.4 / NORMAL_95, 'reference')
    expect(normalisedError(laboratory, reference)).toBeCloseTo(0.5, 12)
    expect(normalisedError(reference, laboratory)).toBeCloseTo(0.5, 12)
  })

  it('is satisfactory up to 1 and not above', () => {
    const reference = measured(100, 0.4 / NORMAL_95, 'reference')
    expect(normalisedError(measured(100.499, 0.3 / NORMAL_95, 'inside'), reference)).toBeLessThan(1)
    expect(normalisedError(measured(100.501, 0.3 / NORMAL_95, 'outside'), reference)).toBeGreaterThan(1)
  })

  it('takes U with Student’s t where the degrees of freedom are few', () => {
    // Four degrees of freedom: t 2.776 at 95 % (JCGM 100:2008, table G.2).
    const few = measured(10, 0.1, 'five readings', { dof: 4 })
    expect(normalisedError(few, exact(10.2776))).toBeCloseTo(1, 3)
  })

  it('leaves out what both share', () => {
    const scale = measured(0, 5, 'scale of the view')
    const a = add(measured(100, 0.3 / NORMAL_95, 'a'), scale)
    const b = add(measured(100.25, 0.4 / NORMAL_95, 'b'), scale)
    expect(normalisedError(a, b)).toBeCloseTo(0.5, 9)
  })

  it('is nothing for equal values and beyond doubt for exact ones that differ', () => {
    expect(normalisedError(exact(5), exact(5))).toBe(0)
    expect(normalisedError(measured(5, 1, 'a'), exact(5))).toBe(0)
    expect(normalisedError(exact(5), exact(6))).toBe(BEYOND_DOUBT)
  })
})
