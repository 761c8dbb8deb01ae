import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { displayWidth } from '../../../../src/core/handoff/table/display-width.ts'
import { toUncertainty, twoFigures } from '../../../../src/core/handoff/table/rounding.ts'
import { statedValue } from '../../../../src/core/handoff/table/stated-value.ts'
import { tableText } from '../../../../src/core/handoff/table/table-text.ts'
import { wrapText } from '../../../../src/core/handoff/table/wrap-text.ts'
import { aRow, aTable } from './a-table.ts'

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

describe('a table for a terminal', () => {
  test('has its columns in line, the reason beside each row, then views, relations and cautions', () => {
    const lines = tableText(aTable(), 110).split('\n')
    const rows = lines.slice(3, 8)
    expect(rows[0]).toBe('name         figure ± U (95 %)          basis    status  no.  why')
    expect(rows[2]).toBe(
      'drum_length  14 3/8" (tolerance ±1/32)  printed  agreed    1  The printed figure governs.',
    )
    expect(rows[3]).toContain('rim          1.5" ± 0.031"              scaled   single    4  ')
    expect(rows[4]).toContain(
      'neck         —                          —        open      1  No usable evidence.',
    )
    const text = lines.join('\n')
    expect(text).toContain(
      'V1 Elevation: uniform, scale 0.04000 in/px (u 0.00029); chi-square 14.2 with 2 degrees of',
    )
    expect(text).toContain('  ! Reference R3 does not fit the others: misread figure, or not to scale?')
    expect(text).not.toContain('Reference R1')
    expect(text).toContain(
      'Q1 (overall = neck + drum_length) does not hold: misses by 0.250 (u 0.020, w 12.5)',
    )
    expect(text).toContain('Cautions\n- Values scaled from a print are estimates.\n')
  })

  test('in a narrow one the reason goes under its row', () => {
    const lines = tableText(aTable(), 70).split('\n')
    const at = lines.findIndex((line) => line.startsWith('rim '))
    expect(lines[at + 1]).toBe('    The printed figure governs.')
  })

  test.each([
    [134, false],
    [135, true],
  ])('at %d columns the reason stands beside its row only where it has room: %s', (width, beside) => {
    const lines = tableText(
      aTable({ rows: [aRow({ tolerance: '+0.0005 −0.0015 over both cheeks' })] }),
      width,
    )
    expect(lines.split('\n')[3]?.endsWith('  why')).toBe(beside)
  })

  test('what is wrong with a view is said once, with the view', () => {
    const table = aTable()
    const cautions = [...table.cautions, ...table.views.map((v) => `View "${v.name}": ${v.problem}`)]
    expect(tableText({ ...table, cautions }, 100)).toBe(tableText(table, 100))
  })

  test('no reason runs over its edge, and no escape sequence of a label reaches it', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 300 }),
        fc.integer({ min: 80, max: 200 }),
        (why, width) => {
          const text = tableText(aTable({ rows: [aRow({ why })], views: [], relations: [] }), width)
          for (const line of text.split('\n').slice(4)) expect(displayWidth(line)).toBeLessThanOrEqual(width)
          expect(text).not.toMatch(/[^\P{Cc}\n]/u)
        },
      ),
    )
    expect(tableText(aTable({ job: 'x\u001b[31m\u202ey' }))).toMatch(/^x \[31m y\n/)
  })

  test('columns count what a terminal shows, not code units', () => {
    expect(displayWidth('14 3/8"')).toBe(7)
    expect(displayWidth('e\u0301')).toBe(1)
    expect(displayWidth('図面')).toBe(4)
    expect(displayWidth('Ø')).toBe(1)
  })

  test('wrapping keeps every word, and breaks only what is longer than a line', () => {
    expect(wrapText('the neck and the rim', 8)).toEqual(['the neck', 'and the', 'rim'])
    expect(wrapText('extraordinarily', 6)).toEqual(['extrao', 'rdinar', 'ily'])
    expect(wrapText('', 6)).toEqual([''])
  })

  test.each([
    'scale 0.013454 in/px (u 0.000028)',
    'scale 3" = 1\'-0" stated, 0.7 % smaller on the scan',
    'misses by −0.500 (u 0.048, w −10.5)',
    'chi-square 14.2 with 2 degrees of freedom, p below 0.001',
    'but scaled 3 1/8" − 0.009" ± 0.031" disputes it (E_n 7.0).',
    '63.12 sq in ± 0.39 sq in and 365.1 mm ± 0.45 mm',
  ])('no line of %j ends between a number and its symbol or unit', (text) => {
    for (let width = 34; width <= text.length + 1; width++) {
      const lines = wrapText(text, width)
      expect(lines.join(' ')).toBe(text)
      for (const line of lines.slice(0, -1)) expect(line).not.toMatch(/(\(u|[ (]w|p|E_n|below|[−±]|sq)$/)
      for (const line of lines.slice(1)) expect(line).not.toMatch(/^(%|in|sq|mm|px|\d+\/\d|[−±])/)
    }
  })
})
