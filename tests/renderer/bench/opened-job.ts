import type { OpenedJob } from '../../../src/contract/bench-state.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'

/** A job as a host tells of it: nothing in it, nothing done to it here. */
export const openedJob = (own: Partial<OpenedJob> = {}): OpenedJob => ({
  id: 'j',
  job: newJob('Boiler', 'in'),
  n: 1,
  reading: 'r1',
  place: '~/a',
  sample: false,
  writable: true,
  notices: [],
  scans: [],
  savedAt: null,
  ...own,
})
