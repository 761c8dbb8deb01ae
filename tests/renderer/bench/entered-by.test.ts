import { expect, it } from 'vitest'
import { readJob } from '../../../src/core/job/read-job.ts'
import { changedSince, enteredBy, momentInWords } from '../../../src/renderer/bench/signature.ts'
import { winchJob } from '../../core/job/winch-job.ts'

const job = readJob(winchJob())
const [at, changedAt] = ['2026-03-09T10:05:00Z', '2026-03-09T10:15:00Z']

it('who entered a thing is said with who changed it last', () => {
  expect(enteredBy(job, {})).toBeNull()
  expect(enteredBy(job, { by: 'ben', at })).toBe(`Ben Adze, ${momentInWords(at)}`)
  expect(enteredBy(job, { by: 'ben', at, changedBy: 'ada', changedAt })).toBe(
    `Ben Adze, ${momentInWords(at)}, changed by Ada Quill, ${momentInWords(changedAt)}`,
  )
  expect(changedSince(job, { by: 'ben', at })).toBe('')
  expect(changedSince(job, { changedAt })).toBe(`, changed by somebody, ${momentInWords(changedAt)}`)
})
