import { describe, expect, it } from 'vitest'
import { tableCsv } from '../../../../src/core/handoff/table/table-csv.ts'
import { tableTabbed } from '../../../../src/core/handoff/table/table-tabbed.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { sampleJob } from '../../../renderer/sample-job.ts'

const table = dimensionTable(sampleJob)
const cells = (text: string): string[][] =>
  text
    .replace(/\n$/, '')
    .split('\n')
    .map((line) => line.split('\t'))

describe('a table for the clipboard', () => {
  it('has a head row and as many cells in every row', () => {
    const [head = [], ...rows] = cells(tableTabbed(table))
    expect(rows).toHaveLength(table.rows.length)
    expect(head).toContain('written')
    for (const row of rows) expect(row).toHaveLength(head.length)
  })

  it('says the same as the file, cell by cell', () => {
    // After RFC 4180: what is quoted has its quotation marks twice.
    const file = tableCsv(table)
      .split('\r\n')
      .slice(0, table.rows.length + 1)
      .map((record) =>
        [...record.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
          ([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? '',
        ),
      )
    expect(cells(tableTabbed(table))).toEqual(file)
  })

  it('keeps a tab, a line end or a quotation mark at its beginning within the cell', () => {
    const [row] = table.rows
    if (row === undefined) throw new Error('the sample has no rows')
    const odd = { ...row, label: '"Drum",\tinside\nor out' }
    const [, only = []] = cells(tableTabbed(table, [odd]))
    expect(only[1]).toBe('"""Drum"", inside or out"')
    expect(only).toHaveLength(cells(tableTabbed(table))[0]?.length ?? 0)
  })
})
