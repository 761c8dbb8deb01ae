import { describe, expect, test } from 'vitest'
import { statedValue } from '../../../../src/core/handoff/table/stated-value.ts'
import { toUncertainty, twoFigures } from '../../../../src/core/quantity/format/rounding.ts'
import { aRow } from './a-table.ts'

describe('a value as the shop reads it', () => {
  test.each([
    [aRow(), 'in', '14 3/8"'],
    [aRow({ tolerance: '±1/32' }), 'in', '14 3/8" (tolerance ±1/32)'],
    [aRow({ written: '14.37"', U: 0.0312 }), 'in', '14.37" ± 0.031"'],
    [aRow({ written: '365.1 mm', U: 0.449 }), 'mm', '365.1 mm ± 0.45 mm'],
    [aRow({ written: "47° 30'", kind: 'angle', U: 0.249 }), 'in', "47° 30' ± 0.25°"],
    [aRow({ written: '12.5 sq in', kind: 'area', U: 1.04 }), 'in', '12.5 sq in ± 1.0 sq in'],
    [aRow({ value: null, U: 0.3 }), 'in', '—'],
  ] as const)('%#', (row, unit, stated) => {
    expect(statedValue(row, unit)).toBe(stated)
  })

  // JCGM 100:2008, 7.2.6: at most two significant digits; the numbers are ours.
  test.each([
    [0.0312, '0.031'],
    [0.0998, '0.10'],
    [1.04, '1.0'],
    [9.96, '10'],
    [123.4, '120'],
    [0, '0'],
    [2e-14, '2.0e-14'],
    [Number.NaN, '?'],
  ])('an uncertainty of %d is given as %s', (u, text) => {
    expect(twoFigures(u)).toBe(text)
  })

  // JCGM 100:2008, 7.2.6: a value is rounded to be consistent with its uncertainty; the numbers are ours.
  test.each([
    [0.01345412, 0.0000281, '0.013454'],
    [0.0400012, 0.00029, '0.04000'],
    [-0.5, 0.048, '−0.500'],
    [-1e-17, 0.044, '0.000'],
    [0.0661, 0.0998, '0.07'],
    [1234.5, 123.4, '1230'],
    [14.5, 9.96, '15'],
    [0.25, 0, '0.25'],
    [1 / 3, Number.NaN, '0.333333'],
    [0, 2e-14, '0e+0'],
    [3.14159e-13, 2e-14, '3.14e−13'],
  ])('%d with an uncertainty of %d is given as %s', (value, u, text) => {
    expect(toUncertainty(value, u)).toBe(text)
  })
})
