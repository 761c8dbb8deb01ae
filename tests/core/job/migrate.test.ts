import { describe, expect, it } from 'vitest'
import { migrate } from '../../../src/core/job/migrate.ts'

// Steps of no meaning, to see the way that is taken.
const steps = new Map([
  [1, (job: Record<string, unknown>) => ({ ...job, steps: [1] })],
  [2, (job: Record<string, unknown>) => ({ ...job, steps: [...(job['steps'] as number[]), 2] })],
])

describe('a job of an older version', () => {
  it('takes every step in order and ends at the newest version', () => {
    expect(migrate({ version: 1, title: 'a' }, steps, 3)).toEqual({ version: 3, title: 'a', steps: [1, 2] })
    expect(migrate({ version: 2, steps: [] }, steps, 3)).toEqual({ version: 3, steps: [2] })
  })

  it('is left as it was, for the steps work on a copy', () => {
    const old = Object.freeze({ version: 1, title: 'a' })
    migrate(old, steps, 3)
    expect(old).toEqual({ version: 1, title: 'a' })
  })

  it('is refused when a step is missing', () => {
    expect(() => migrate({ version: 1 }, new Map(), 2)).toThrow(
      'The job is of format version 1, and this Scantling has no way from version 1 to 2: nothing was changed.',
    )
  })

  it('of this version takes no step', () => {
    const job = { version: 2 }
    expect(migrate(job)).toBe(job)
  })

  it('newer than this one is refused', () => {
    expect(() => migrate({ version: 4 }, steps, 3)).toThrow(/format version 4; this one reads up to 3/)
    expect(() => migrate({ version: 1e300 })).toThrow(/newer Scantling/)
  })

  it('without a version is refused', () => {
    expect(() => migrate({})).toThrow('The job has no "version", so it cannot be read safely.')
  })
})
