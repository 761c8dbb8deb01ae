import { expect, it } from 'vitest'
import type { View } from '../../../../src/core/job/model/types.ts'
import { type BenchContents, useBench } from '../../../../src/renderer/bench/bench-store.ts'
import { viewAtWork } from '../../../../src/renderer/desk/in-hand/view-at-work.ts'
import { noPicks } from '../../../../src/renderer/picking/picks.ts'
import { sampleJob } from '../../sample-job.ts'

const view = (id: string, sheet: string): View => ({
  id,
  sheet,
  name: id,
  mapping: 'uniform',
  references: [],
})

const bench = (more: Partial<BenchContents>): BenchContents => ({
  ...useBench.getState(),
  opened: {
    id: 'j1',
    job: { ...sampleJob, views: [view('A', 'S1'), view('B', 'S1'), view('C', 'S2')] },
    n: 1,
    reading: 'r1',
    place: '',
    sample: false,
    writable: true,
    notices: [],
    scans: [],
    savedAt: null,
  },
  sheet: 'S1',
  ...more,
})

it('The desk is about the view of the tool, else the one chosen, else the last one, else the first', () => {
  const chosen = { kind: 'view', id: 'B' } as const
  const tool = noPicks({ kind: 'measure', view: 'A', measure: 'distance' })
  expect(viewAtWork(bench({ picks: tool, selection: chosen }), null)?.id).toBe('A')
  expect(viewAtWork(bench({ selection: chosen }), 'A')?.id).toBe('B')
  expect(viewAtWork(bench({}), 'B')?.id).toBe('B')
  expect(viewAtWork(bench({}), null)?.id).toBe('A')
})

it('It is never about a view of a sheet that is not on the bench', () => {
  expect(viewAtWork(bench({ selection: { kind: 'view', id: 'C' } }), 'C')?.id).toBe('A')
  expect(viewAtWork(bench({ sheet: 'S2', selection: { kind: 'view', id: 'B' } }), 'A')?.id).toBe('C')
  expect(viewAtWork(bench({ sheet: 'S3' }), 'A')).toBeUndefined()
})
