import { expect, it } from 'vitest'
import { formatMeasuredScale } from '../../../../src/core/quantity/format/format-measured-scale.ts'

it.each([
  [0.2483, '1:4.027'],
  [0.99602, '1:1.004'],
  [1.00002, '1:1.000'],
  [0.99998, '1:1.000'],
  [1.0004, '1:1.000'],
  [1.004, '1.004:1'],
  [1.992, '1.992:1'],
])('A scale of %d in millimetres is %s, full size always one way round', (scale, written) => {
  expect(formatMeasuredScale(scale, 'mm')).toBe(written)
})

it('A scale in inches is of a foot', () => {
  expect(formatMeasuredScale(2.98 / 12, 'in')).toBe(`2.980" = 1'-0"`)
})
