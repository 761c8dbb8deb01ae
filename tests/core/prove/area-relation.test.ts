import { expect, it } from 'vitest'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'

const area = (name: string, text: string) => ({
  name,
  label: '',
  kind: 'area',
  evidence: [{ id: 'P1', basis: 'printed', text }],
})

const closing = (u: string) =>
  dimensionTable(
    readJob({
      ...newJob('Hood', 'in'),
      dimensions: [area('sheet', '6.5 sq in'), area('blank', '6 sq in')],
      relations: [{ id: 'E1', text: 'sheet = blank', u }],
    }),
  ).relations[0]

it('a relation between areas says what it may miss by in an area', () => {
  expect(closing('0.5 sq in')).toMatchObject({ holds: true })
  expect(closing('0.5 sq in')?.misclosure).toBeCloseTo(0.5, 12)
  // 0.5 in² of misclosure, and each figure good to ± 0.05 in², rectangular: u² = 0.5² + 0.05²/3 + 0.5²/3.
  expect(closing('0.5 sq in')?.u).toBeCloseTo(Math.hypot(0.5, 0.05 / Math.sqrt(3), 0.5 / Math.sqrt(3)), 12)
  expect(closing('0.001 sq in')?.u).toBeLessThan(0.3)
})

it('and a length in its place is told to be of another kind', () => {
  expect(closing('1/2"')).toMatchObject({ holds: false, problem: expect.stringContaining('not of its kind') })
})
