import { expect, test } from 'vitest'
import type { OpenedJob } from '../../../src/contract/bench-state.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import { refusedAsTheirs, theirStep } from '../../../src/renderer/bench/their-step.ts'
import { openedJob } from './opened-job.ts'

const people = [
  { id: 'AR', name: 'A. Rivet' },
  { id: 'BB', name: 'B. Brass' },
]

const opened = (by: string | undefined): OpenedJob =>
  openedJob({
    job: { ...newJob('Boiler', 'in'), people },
    ...(by === undefined ? {} : { undoName: 'add mark M5', undoBy: { by, at: '2026-03-01T08:00:00Z' } }),
  })

test("an edit of one's own is taken back at once, by whichever name one goes", () => {
  for (const person of ['AR', 'ar', ' A. Rivet ', 'a. rivet']) {
    expect(theirStep(opened('AR'), 'undo', person)).toBeNull()
    expect(theirStep(opened('A. Rivet'), 'undo', person)).toBeNull()
  }
  expect(theirStep(opened(undefined), 'undo', 'AR')).toBeNull()
  expect(theirStep(opened('BB'), 'redo', 'AR')).toBeNull()
})

test("somebody else's is asked about, with who made it and when", () => {
  const step = theirStep(opened('BB'), 'undo', 'AR')
  expect(step).toMatchObject({ kind: 'undo', name: 'add mark M5' })
  expect(step?.made).toMatch(/^B\. Brass, 1 Mar 2026, \d\d:\d\d$/)
  expect(theirStep(opened('C. Cramp'), 'undo', '')?.made).toMatch(/^C\. Cramp, /)
})

test('what a host refuses as made by another is asked about too, and nothing else that it refuses', () => {
  const parts = { kind: 'redo', name: 'B. Brass', at: '2026-03-01T08:00:00Z', edit: 'add mark M5' }
  const refused = (code: string) =>
    refusedAsTheirs({ ok: false, reason: { code, parts } as never, sentence: 'ask for it once more' })
  expect(refused('session.of-another')).toMatchObject({ kind: 'redo', name: 'add mark M5' })
  expect(refused('session.of-another')?.made).toMatch(/^B\. Brass, 1 Mar 2026, \d\d:\d\d$/)
  expect(refused('session.nothing-to-redo')).toBeNull()
})
