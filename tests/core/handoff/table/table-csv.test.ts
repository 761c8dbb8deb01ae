import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { spreadsheetText } from '../../../../src/core/handoff/table/csv-cell.ts'
import { tableCsv } from '../../../../src/core/handoff/table/table-csv.ts'
import { aRow, aTable, uncheckedRelation } from './a-table.ts'

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
  test('has one heading record, then one record for each dimension, relation and caution, all of one length', () => {
    const found = readCsv(tableCsv(aTable()))
    expect(found.map((record) => record[0])).toEqual([
      ...['name', 'drum_length', 'rim', 'neck'],
      ...['# relation', '# relation', '# caution'],
    ])
    expect(new Set(found.map((record) => record.length)).size).toBe(1)
  })

  test('gives uncertainties to four digits, values to the same place, and no more freedom than counts', () => {
    expect(
      records({ value: 100 / 3, u: 0.1 + 0.2, U: 0.588, k: 1.959963984540054, dof: 9010597866438.98 }),
    ).toMatchObject({ value: '33.3333', u: '0.3', U: '0.588', k: '1.96', dof: '' })
    expect(records({ value: 27.2925123456, u: 0, U: 0, dof: 12.3456 })).toMatchObject({
      value: '27.292512',
      dof: '12.35',
    })
  })

  test('says nothing of the uncertainty of an open row', () => {
    const open = {
      value: null,
      written: '',
      basis: null,
      u: 0,
      U: 0,
      k: 1.96,
      dof: 3,
      status: 'open',
    } as const
    expect(records(open)).toMatchObject({ value: '', written: '', u: '', U: '', k: '', dof: '' })
    expect(records(open)).toMatchObject({ name: 'drum_length', status: 'open', count: '1' })
  })

  test('says of each relation whether it holds and by how much it misses', () => {
    const table = aTable()
    const relations = [...table.relations, uncheckedRelation('Q3', 'a = c', ['c'])]
    const [headings = [], ...rest] = readCsv(tableCsv({ ...table, relations }))
    const at = (heading: string): number => headings.indexOf(heading)
    const said = rest
      .filter(([first]) => first === '# relation')
      .map((cells) => [cells[at('label')], cells[at('status')], cells[at('why')]])
    expect(said).toEqual([
      ['Q1: overall = neck + drum_length', 'does not hold', 'out by 1/4"; 0.039" would be allowed'],
      ['Q2: a = b', 'holds', 'holds exactly; 0.039" would be allowed'],
      ['Q3: a = c', 'not checked', 'c has no value.'],
    ])
  })

  test('gives the unit of each kind, and nothing where there is no value or no end of freedom', () => {
    expect(records({ value: 14.375, u: 1e-7, dof: 4.5 })).toMatchObject({
      value: '14.375',
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
    ['＝1+1', "'＝1+1"],
    ['＋1+1', "'＋1+1"],
    ['－1+1', "'－1+1"],
    ['＠SUM(A1)', "'＠SUM(A1)"],
    ['﹦1+1', "'﹦1+1"],
    ['﹢cmd|x', "'﹢cmd|x"],
    ['﹣3/8"', '\'﹣3/8"'],
    ['﹫SUM(A1)', "'﹫SUM(A1)"],
    ['-12.5', '-12.5'],
    ['rim = neck', 'rim = neck'],
  ])('a text %j cannot be taken for a formula', (text, safe) => {
    expect(spreadsheetText(text)).toBe(safe)
    expect(records({ label: text })['label']).toBe(safe)
  })

  // What spreadsheets take for dates and numbers: common practice, no source.
  test.each([
    ...[
      '1/64',
      '±1/32',
      '1 1/2',
      '3-4',
      '1-2-1911',
      '1911-05-02',
      '1911-05-02T10:00Z',
      '2.5.11',
      '1:30',
      '1:30 pm',
    ],
    ...[
      '5 May',
      'May 5',
      'may-11',
      'Sept. 3, 1911',
      '2 June 1911',
      '1e5',
      '+1',
      '007',
      '0.50',
      '.005',
      '12 %',
    ],
    ...['1,250', '(12)', '$5', '−3/8', '-0', 'TRUE'],
  ])('a text %j stays what it is', (text) => {
    expect(records({ tolerance: text })['tolerance']).toBe(text === '±1/32' ? text : `'${text}`)
  })

  test.each([
    '8',
    '0',
    '12.5',
    '-12.5',
    '0.25',
    '14 3/8"',
    '1/64 in',
    '2\'-0 5/8"',
    '55°',
    'M6',
    'Mar',
    'May rim',
    '',
  ])('a text %j needs no apostrophe', (text) => {
    expect(spreadsheetText(text)).toBe(text)
  })

  test('a negative number stays a number', () => {
    expect(records({ value: -0.25 })['value']).toBe('-0.25')
  })

  test('whatever a label says, a strict reader gets it back on one line', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (label) => {
        const found = records({ label })['label'] ?? ''
        expect(found.replace(/^'/, '').replace(/\s/g, '')).toBe(
          label
            .replace(/[\p{Cc}\s\u061c\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu, '')
            .replace(/^'/, ''),
        )
        expect(found).not.toMatch(/^[=@＝＋－＠\t\r]|^[+-](?!\d+(\.\d+)?$)/)
        expect(found).not.toMatch(/^\d+[/:-]\d+$/)
      }),
    )
  })
})
