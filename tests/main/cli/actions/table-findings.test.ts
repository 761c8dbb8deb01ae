import { expect, test } from 'vitest'
import type { TableEvidence } from '../../../../src/core/ledger/table/table.ts'
import { type CoreReason, inWords, reason } from '../../../../src/core/words/core-words.ts'
import { tableFindings } from '../../../../src/main/cli/actions/table-findings.ts'
import { aRow, aTable, uncheckedRelation } from '../../../core/handoff/table/a-table.ts'

test('the findings are what must be settled: disputed, open, suspect, hard to read, unclosed', () => {
  const rows = [
    ...aTable().rows,
    aRow({ name: 'lid', status: 'disputed', why: 'Printed and scaled differ.' }),
  ]
  const findings = tableFindings(aTable({ rows }))
  expect(findings.disputed).toEqual(['lid: Printed and scaled differ.'])
  expect(findings.open).toEqual(['neck: No usable evidence.'])
  expect(findings.scales).toHaveLength(1)
  expect(findings.scales[0]).toMatch(
    /^V1 Elevation: Reference R3 does not fit the others: misread figure, or not to scale\? It is set aside\.$/,
  )
  expect(findings.unheld).toEqual(['Q1 (overall = neck + drum_length): out by 1/4"; 0.039" would be allowed'])
  expect([findings.figures, findings.unchecked]).toEqual([[], []])
})

test('a relation over a dimension without a value is not checked, and does not count as one that does not hold', () => {
  const relations = [uncheckedRelation('Q1', 'a = neck', ['neck'])]
  const { unheld, unchecked } = tableFindings(aTable({ relations }))
  expect(unheld).toEqual([])
  expect(unchecked).toEqual(['Q1 (a = neck): neck has no value.'])
})

test('printed figures that are hard or impossible to read are to be settled, unless they are withdrawn', () => {
  const evidence = (
    id: string,
    basis: 'printed' | 'scaled',
    written: string,
    problemReason?: CoreReason,
  ): TableEvidence => ({
    ...{ id, basis, written, value: null, u: 0, U: 0, governs: false },
    ...(problemReason === undefined ? {} : { problem: inWords(problemReason), problemReason }),
  })
  const row = aRow({
    evidence: [
      evidence('E1', 'printed', '14"', reason('evidence.hard-to-read')),
      evidence('E2', 'printed', '', reason('evidence.not-read')),
      evidence('E3', 'printed', '', reason('evidence.withdrawn', { why: 'misread' })),
      evidence('E4', 'printed', '14 3/8"'),
      evidence('E5', 'scaled', '', reason('evidence.no-such-view', { view: 'V9' })),
    ],
  })
  expect(tableFindings(aTable({ rows: [row] })).figures).toEqual([
    'drum_length, figure E1 (14"): Hard to read, so it is not adopted by itself: adopt it once you are sure of the reading, or withdraw it.',
    'drum_length, figure E2: It was not read.',
  ])
})
