/**
 * What a power cut may leave of a write: any of its pages and not others, whatever order they were written in, with the
 * file as long as it was, as long as it was to be, or between. Each such state must open with every edit that was
 * acknowledged, or be refused with a way out that brings every one back.
 */
import { readdir, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { mendJob } from '../../../../src/main/services/job-folder/mend-job.ts'
import { openJob } from '../../../../src/main/services/job-folder/open-job.ts'
import { inWords } from '../../../../src/main/services/words/services-words.ts'
import { filesOf, type JobFiles, pick, putFiles, withJob } from '../../fixtures/history-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'

const PAGE = 4096
/** So many kinds at least must have been seen. */
const FEWEST = 250

/** An edit whose line goes over some pages. */
const long = (pages: number, word: string): Edit => ({
  do: 'describe',
  set: { title: `${word} ${'Ø 7 ½ '.repeat(Math.ceil((pages * PAGE) / 10))}` },
})

const ACKNOWLEDGED = 3

interface Torn {
  /** Before the last write, and after it. */
  before: JobFiles
  after: JobFiles
  jobs: Job[]
}

/** A job with three edits acknowledged, saved after the first, and one write more. */
async function written(last: readonly Edit[]): Promise<Torn & { folder: string }> {
  const { folder, job } = await workshopJob()
  const jobs = [job]
  const session = await openJob(folder, { mode: 'write' })
  for (const [i, edit] of [pick('a'), long(2, 'acknowledged'), pick('b')].entries()) {
    await session.edit(edit, 'AR')
    jobs.push(session.job)
    if (i === 0) await session.save()
  }
  const before = await filesOf(folder)
  await Promise.all(last.map((edit) => session.edit(edit, 'AR')))
  const after = await filesOf(folder)
  await session.close()
  return { folder, before, after, jobs }
}

/** Every state that a write may leave: some of its pages, with the file of some length. */
function* tornStates(before: Buffer, after: Buffer): Generator<Buffer> {
  const first = Math.floor(before.length / PAGE)
  const pages = Math.ceil(after.length / PAGE) - first
  const ends = [
    before.length,
    after.length,
    ...Array.from({ length: pages }, (_, i) => (first + i) * PAGE + 1700),
  ]
  for (let mask = 0; mask < 2 ** pages; mask++) {
    for (const end of ends) {
      if (end < before.length || end > after.length) continue
      const state = Buffer.alloc(end)
      before.copy(state)
      for (let i = 0; i < pages; i++) {
        if ((mask & (2 ** i)) === 0) continue
        const at = (first + i) * PAGE
        after.copy(state, at, at, Math.min(at + PAGE, end))
      }
      yield state
    }
  }
}

const unique = (states: Iterable<Buffer>): Buffer[] => [
  ...new Map([...states].map((state) => [state.toString('latin1'), state])).values(),
]

let kinds = 0

describe.each([
  ['one edit', [long(3, 'last')]],
  ['an edit of half a page', [pick('last')]],
  ['two edits at once', [long(1, 'first of two'), long(2, 'second of two')]],
])('the history, with %s on its way to the disk', (_, last) => {
  let torn: Torn & { folder: string }
  let states: Buffer[]
  beforeAll(async () => {
    torn = await written(last)
    const { before, after } = torn
    const cuts = Array.from({ length: 24 }, (_, i) =>
      after.history.subarray(
        0,
        before.history.length + Math.floor(((after.history.length - before.history.length) * i) / 24),
      ),
    )
    const noise = cuts
      .slice(0, 8)
      .map((cut, i) => Buffer.concat([cut, Buffer.from([10, 0, 255, 123, 10, 34, 92, 10]).subarray(i)]))
    states = unique([...tornStates(before.history, after.history), ...cuts, ...noise])
  })

  test('whatever it leaves, every acknowledged edit is there, and nothing that nobody made', async () => {
    const { folder, before, jobs } = torn
    for (const [i, history] of states.entries()) {
      await putFiles(folder, { job: before.job, history })
      const session = await openJob(folder, { mode: i % 12 === 0 ? 'write' : 'read' })
      const n = session.job.edition ?? 0
      expect(n, `state ${i}`).toBeGreaterThanOrEqual(ACKNOWLEDGED)
      expect(n, `state ${i}`).toBeLessThanOrEqual(ACKNOWLEDGED + last.length)
      if (n === ACKNOWLEDGED) expect(session.job).toEqual(jobs[n])
      if (i % 12 === 0) {
        const { notices } = session
        await session.edit(pick('next'), 'AR')
        await session.close()
        await withJob(folder, async (again) => {
          expect(again.notices).toEqual([])
          expect(again.job).toEqual(session.job)
        })
        // What was set aside is kept, to the byte.
        const aside = await readdir(join(folder, 'set-aside')).catch(() => [])
        expect(aside.length).toBe(notices.length)
        for (const name of aside) {
          const bytes = await readFile(join(folder, 'set-aside', name))
          expect(history.subarray(history.length - bytes.length).equals(bytes)).toBe(true)
        }
        await rm(join(folder, 'set-aside'), { recursive: true, force: true })
      }
    }
    kinds += states.length
  }, 60_000)
})

describe('job.json', () => {
  test('whatever of it reached the disk, the job opens with every edit, or is made again from the history', async () => {
    const { folder, before, after, jobs } = await written([])
    const { job: fresh } = await withJob(folder, async () => filesOf(folder))
    const states = unique([
      ...tornStates(Buffer.alloc(0), fresh),
      ...Array.from({ length: 16 }, (_, i) => fresh.subarray(0, Math.floor((fresh.length * i) / 16))),
      ...Array.from({ length: 8 }, (_, i) =>
        Buffer.concat([fresh.subarray(0, 300 * i), before.job.subarray(300 * i)]),
      ),
    ])
    let refused = 0
    for (const [i, job] of states.entries()) {
      await putFiles(folder, { job, history: after.history })
      const said = await openJob(folder, { mode: 'read' }).then(
        (session) => {
          const last = session.notices.map(inWords).join(' ')
          // What was changed outside is shown with its remark.
          if (!last.includes('was changed by hand')) expect(session.job, `state ${i}`).toEqual(jobs.at(-1))
          return last
        },
        (error: unknown) => String(error),
      )
      if (said === '') continue
      refused += 1
      expect(said, `state ${i}`).toContain(`scantling mend ${folder}`)
      if (i % 8 !== 0) continue
      await mendJob(folder, 'history', { by: 'AR', now: new Date() })
      await withJob(folder, async (again) => {
        expect(again.notices).toEqual([])
        expect(again.job).toEqual(jobs.at(-1))
      })
    }
    expect(refused).toBeGreaterThan(0)
    kinds += states.length
  }, 60_000)

  test('so many kinds were seen', () => {
    console.log(`torn writes: ${kinds} kinds of torn, zeroed, reordered and dropped writes`)
    expect(kinds).toBeGreaterThanOrEqual(FEWEST)
  })
})
