import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { disarmed, tableCsv } from '../../../src/core/handoff/table-csv.ts'
import { aRow, aTable } from './a-table.ts'

/** RFC 4180, section 2: records of cells, read strictly. */
function readCsv(text: string): string[][] {
  const records: string[][] = []
  let record: string[] = []
  let at = 0
  while (at < text.length) {
    let cell = ''
    if (text[at] === '"') {
      const quoted = /"((?:[^"]|"")*)"/y
      quoted.lastIndex = at
      const found = quoted.exec(text)
      if (found === null) throw new Error(`open quote at ${at}`)
      cell = (found[1] ?? '').replaceAll('""', '"')
      at = quoted.lastIndex
    } else {
      const end = text.slice(at).search(/[,\r]/)
      cell = text.slice(at, at + end)
      if (/["\n]/.test(cell)) throw new Error(`bare quote or line end in ${cell}`)
      at += end
    }
    record.push(cell)
    if (text[at] === ',') at += 1
    else if (text.startsWith('\r\n', at)) {
      records.push(record)
      record = []
      at += 2
    } else throw new Error(`neither comma nor CRLF at ${at}`)
  }
  return records
}

const records = (change: Parameters<typeof aRow>[0]): Record<string, string> => {
  const [headings = [], cells = []] = readCsv(tableCsv(aTable({ rows: [aRow(change)] })))
  return Object.fromEntries(headings.map((heading, i) => [heading, cells[i] ?? '']))
}

describe('a table as comma-separated values', () => {
  test('has one heading record, one record for each dimension and one for each caution, all of one length', () => {
    const found = readCsv(tableCsv(aTable()))
    expect(found.map((record) => record[0])).toEqual(['name', 'drum_length', 'rim', 'neck', '# caution'])
    expect(new Set(found.map((record) => record.length)).size).toBe(1)
  })

  test('gives numbers with all their digits, and nothing where there is no value or no end of freedom', () => {
    expect(records({ value: 1 / 3, u: 1e-7, dof: 4.5 })).toMatchObject({
      value: '0.3333333333333333',
      u: '1e-7',
      dof: '4.5',
      unit: 'in',
      written: '14 3/8"',
    })
    expect(records({ value: null, basis: null })).toMatchObject({ value: '', basis: '', dof: '' })
    expect(records({ kind: 'area' })['unit']).toBe('in2')
    expect(records({ kind: 'angle' })['unit']).toBe('deg')
    expect(records({ kind: 'count' })['unit']).toBe('')
  })

  test.each([
    ['=HYPERLINK("x")', '\'=HYPERLINK("x")'],
    ['+cmd|x', "'+cmd|x"],
    ['-3/8"', '\'-3/8"'],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['-12.5', '-12.5'],
    ['+1', '+1'],
    ['rim = neck', 'rim = neck'],
  ])('a text %j cannot be taken for a formula', (text, safe) => {
    expect(disarmed(text)).toBe(safe)
    expect(records({ label: text })['label']).toBe(safe)
  })

  test('a negative number stays a number', () => {
    expect(records({ value: -0.25 })['value']).toBe('-0.25')
  })

  test('whatever a label says, a strict reader gets it back on one line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (label) => {
        const found = records({ label })['label'] ?? ''
        expect(found.replace(/^'/, '').replace(/\s/g, '')).toBe(
          label.replace(/[\p{Cc}\s\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu, '').replace(/^'/, ''),
        )
        expect(found).not.toMatch(/^[=@\t\r]|^[+-](?!\d+(\.\d+)?$)/)
      }),
    )
  })
})
