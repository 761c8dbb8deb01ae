import fc from 'fast-check'
import stringWidth from 'string-width'
import { describe, expect, test } from 'vitest'
import { tableText } from '../../../../src/main/cli/layout/table-text.ts'
import { wrapText } from '../../../../src/main/cli/layout/wrap-text.ts'
import { aRow, aTable, withCautionsOfViews } from '../../../core/handoff/table/a-table.ts'

describe('a table for a terminal', () => {
  test('has its columns in line, the reason beside each row, then views, relations and cautions', () => {
    const lines = tableText(aTable(), 120).split('\n')
    const rows = lines.slice(3, 8)
    expect(rows[0]).toBe('name         figure ± U (95 %)          basis    status     off  why')
    expect(rows[2]).toBe(
      'drum_length  14 3/8" (tolerance ±1/32)  printed  agreed       1  The printed figure governs.',
    )
    expect(rows[3]).toContain('rim          1.5" ± 0.031"              scaled   unchecked    4  ')
    expect(rows[4]).toContain(
      'neck         —                          —        no value     1  No usable evidence.',
    )
    const text = lines.join('\n')
    expect(text).toContain(
      'V1 Elevation: Same both ways, one scale all over; the rest of its figured sizes do not agree',
    )
    const behind = text.indexOf('\nThe numbers behind the views\n')
    expect(
      text.indexOf('V1 Elevation: scale 0.04000 in/px (u 0.00029); chi-square 14.2 with 2 degrees of'),
    ).toBeGreaterThan(behind)
    expect(behind).toBeGreaterThan(text.indexOf('Q1 (overall'))
    expect(text).toContain('  ! Reference R3 does not fit the others: misread figure, or not to scale?')
    expect(text).not.toContain('Reference R1')
    expect(text).toContain('Q1 (overall = neck + drum_length): out by 1/4"; 0.039" would be allowed')
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
    expect(tableText(withCautionsOfViews(table), 100)).toBe(tableText(table, 100))
  })

  test('no reason runs over its edge, and no escape sequence of a label reaches it', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 300 }),
        fc.integer({ min: 80, max: 200 }),
        (why, width) => {
          const text = tableText(aTable({ rows: [aRow({ why })], views: [], relations: [] }), width)
          for (const line of text.split('\n').slice(4)) expect(stringWidth(line)).toBeLessThanOrEqual(width)
          expect(text).not.toMatch(/[^\P{Cc}\n]/u)
        },
      ),
    )
    expect(tableText(aTable({ job: 'x\u001b[31m\u202ey' }))).toMatch(/^x \[31m y\n/)
  })

  test('columns count what a terminal shows, not code units', () => {
    // East Asian characters take two columns (Unicode Annex 11), a combining mark none.
    expect(wrapText('図面 図面', 8)).toEqual(['図面', '図面'])
    expect(wrapText('図面 図面', 9)).toEqual(['図面 図面'])
    expect(wrapText('Ø12 q\u0307', 5)).toEqual(['Ø12 q\u0307'])
    const row = aRow({ written: '図面', tolerance: 'q\u0307' })
    expect(tableText(aTable({ rows: [row] }), 100)).toContain('drum_length  図面 (tolerance q\u0307)')
    const [heading = '', , line = ''] = tableText(aTable({ rows: [row] }), 120)
      .split('\n')
      .slice(3)
    const columnOf = (text: string, word: string) => stringWidth(text.slice(0, text.indexOf(word)))
    expect(columnOf(line, 'printed')).toBe(columnOf(heading, 'basis'))
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
