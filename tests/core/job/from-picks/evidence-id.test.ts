import { expect, it } from 'vitest'
import { evidenceId } from '../../../../src/core/job/from-picks/evidence-id.ts'

it('Evidence is numbered by its basis, past what is there', () => {
  const there = ['p1', 'p2', 's1'].map((id) => ({ id, basis: 'derived', formula: 'a' }) as const)
  expect(evidenceId(there, 'printed')).toBe('p3')
  expect(evidenceId(there, 'scaled')).toBe('s2')
  expect(evidenceId(there, 'derived')).toBe('d1')
})
