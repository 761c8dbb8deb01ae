import { describe, expect, it } from 'vitest'
import type { Job } from '../../../src/core/job/model/types.ts'
import { momentInWords, personName, signature } from '../../../src/renderer/bench/signature.ts'
import { sampleJob } from '../sample-job.ts'

describe('who did something, and when', () => {
  it('names people as the job does, and others by what they are called', () => {
    expect(personName(sampleJob, 'om')).toBe('Ottilie Marchbeck')
    expect(personName(sampleJob, 'A. Visitor')).toBe('A. Visitor')
    expect(personName({ ...sampleJob, people: [] } as Job, undefined)).toBe('somebody')
  })

  it('is signed with what is known of it, and not where nothing is', () => {
    expect(signature(sampleJob, 'om', '2026-03-09T12:00:00Z')).toMatch(/^Ottilie Marchbeck, .*Mar 2026/)
    expect(signature(sampleJob, 'om', undefined)).toBe('Ottilie Marchbeck')
    expect(signature(sampleJob, undefined, '2026-03-09T12:00:00Z')).toMatch(/^somebody, .*Mar 2026/)
    expect(signature(sampleJob, undefined, undefined)).toBeNull()
  })

  it('leaves a moment that is none as it is written', () => {
    expect(momentInWords('last week')).toBe('last week')
    expect(momentInWords(undefined)).toBe('undated')
    expect(momentInWords('2026-03-09T12:00:00Z')).toMatch(/Mar 2026/)
  })
})
