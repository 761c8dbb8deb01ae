import { expect, test } from 'vitest'
import { tableFindings } from '../../../../src/main/cli/actions/table-findings.ts'
import { aRow, aTable } from '../../../core/handoff/table/a-table.ts'

test('the findings are what must be settled: disputed, open, suspect, hard to read, unclosed', () => {
  const rows = [
    ...aTable().rows,
    aRow({ name: 'lid', status: 'disputed', why: 'Printed and scaled differ.' }),
  ]
  const findings = tableFindings(aTable({ rows }))
  expect(findings.disputed).toEqual(['lid: Printed and scaled differ.'])
  expect(findings.open).toEqual(['neck: No usable evidence.'])
  expect(findings.suspect).toHaveLength(1)
  expect(findings.suspect[0]).toMatch(
    /^V1 Elevation: Reference R3 does not fit the others: misread figure, or not to scale\? It is left out\.$/,
  )
  expect(findings.unclosed).toEqual([
    'Q1 (overall = neck + drum_length) does not hold: misses by 0.250 (u 0.020, w 12.5)',
  ])
  expect([findings.figures, findings.unchecked]).toEqual([[], []])
})

test('a relation over a dimension without a value is not checked, and does not count as one that fails to close', () => {
  const problem = 'Not checked: neck has no value.'
  const relation = { id: 'Q1', text: 'a = neck', misclosure: 0, u: 0, w: 0, holds: false, problem }
  const { unclosed, unchecked } = tableFindings(aTable({ relations: [relation] }))
  expect(unclosed).toEqual([])
  expect(unchecked).toEqual(['Q1 (a = neck) not checked: neck has no value.'])
})

test('printed figures that are hard or impossible to read are to be settled, unless they are withdrawn', () => {
  const evidence = (id: string, basis: string, written: string, problem?: string) => ({
    ...{ id, basis, written, value: null, u: 0, U: 0, governs: false },
    ...(problem === undefined ? {} : { problem }),
  })
  const row = aRow({
    evidence: [
      evidence('E1', 'printed', '14"', 'Hard to read.'),
      evidence('E2', 'printed', '', 'Cannot read it.'),
      evidence('E3', 'printed', '', 'Withdrawn: misread.'),
      evidence('E4', 'printed', '14 3/8"'),
      evidence('E5', 'scaled', '', 'There is no view V9.'),
    ],
  })
  expect(tableFindings(aTable({ rows: [row] })).figures).toEqual([
    'drum_length, figure E1 (14"): Hard to read.',
    'drum_length, figure E2: Cannot read it.',
  ])
})
