import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { applyEdit, describeEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { parseJobText } from '../../../../src/core/job/parse-job-text.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { JobError } from '../../../../src/core/job/text/job-error.ts'
import { writeJob } from '../../../../src/core/job/write-job.ts'
import { anyJob } from '../arbitrary-job.ts'
import { expectSame } from '../expect-same.ts'
import { ALL_EDITS, anyEdit } from './arbitrary-edit.ts'

/** What hardly any job has something for, so that most are refused. */
const MOSTLY_REFUSED: readonly Edit['do'][] = [
  'remove-sheet',
  'add-reference',
  'change-reference',
  'remove-reference',
  'reinstate-evidence',
]
/** Each kind of edit; those that are mostly refused more often, or there might be a kind that none was made of. */
const DRAWN = [...ALL_EDITS, ...MOSTLY_REFUSED, ...MOSTLY_REFUSED]

/** The edit as a journal gives it back. */
const journalled = (edit: Edit): Edit => readEdit(JSON.parse(JSON.stringify(edit)))

describe('the jobs that these tests draw', () => {
  it('are sound, and read back from their text as they were', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const job = anyJob(draw)
        const read = readJob(job)
        const text = writeJob(read)
        expectSame(read, JSON.parse(JSON.stringify(job)))
        expectSame(parseJobText(text), read)
        expect(writeJob(parseJobText(text))).toBe(text)
      }),
      { numRuns: 200 },
    )
  })
})

describe('any run of edits', () => {
  const made = new Map<string, number>()

  it('is taken back in reverse to the same job and the same text, and made again likewise', () => {
    fc.assert(
      fc.property(fc.gen(), (draw) => {
        const jobs: Job[] = [readJob(anyJob(draw))]
        const texts = [writeJob(jobs[0] as Job)]
        const inverses: Edit[] = []
        const wanted = draw(fc.integer, { min: 1, max: 25 })
        for (let i = 0; i < wanted; i++) {
          const job = jobs[jobs.length - 1] as Job
          const edit = anyEdit(draw, job, `x${i}`, DRAWN)
          if (edit === undefined) continue
          try {
            const applied = applyEdit(job, readEdit(edit))
            jobs.push(applied.job)
            texts.push(writeJob(applied.job))
            inverses.push(applied.inverse)
            made.set(edit.do, (made.get(edit.do) ?? 0) + 1)
            expect(describeEdit(edit)).not.toBe('')
            // What the quick check passed, the whole check passes.
            expectSame(readJob(applied.job), applied.job)
          } catch (error) {
            expect(error).toBeInstanceOf(JobError)
          }
          // The job that it was made of is as it was.
          expect(writeJob(job)).toBe(texts[jobs.indexOf(job)])
        }
        const last = jobs[jobs.length - 1] as Job
        let job = last
        const redos: Edit[] = []
        for (let i = inverses.length - 1; i >= 0; i--) {
          const undone = applyEdit(job, journalled(inverses[i] as Edit))
          job = undone.job
          redos.push(undone.inverse)
          expectSame(job, jobs[i])
          expect(writeJob(job)).toBe(texts[i])
        }
        for (const redo of redos.reverse()) job = applyEdit(job, journalled(redo)).job
        expectSame(job, last)
        expect(writeJob(job)).toBe(texts.at(-1))
      }),
      { numRuns: 250 },
    )
  })

  it('was drawn so that every kind of edit was made', () => {
    expect(ALL_EDITS.filter((word) => !made.has(word))).toEqual([])
  })
})

describe('anything for an edit', () => {
  it('is an edit or refused in words', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.anything(), fc.record({ do: fc.constantFrom(...ALL_EDITS), id: fc.anything() })),
        (json) => {
          try {
            readEdit(json)
          } catch (error) {
            expect(error).toBeInstanceOf(JobError)
          }
        },
      ),
      { numRuns: 1000 },
    )
  })
})
