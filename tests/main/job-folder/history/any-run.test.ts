/** Any run of edits, undos, redos, saves, closings and reopenings gives the job that replaying its history gives. */

import { cp } from 'node:fs/promises'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { KeptLine } from '../../../../src/main/services/job-folder/history/kept-line.ts'
import { linesBack } from '../../../../src/main/services/job-folder/history/lines-back.ts'
import { Replay, type Replayed } from '../../../../src/main/services/job-folder/history/replay-lines.ts'
import type { JobSession } from '../../../../src/main/services/job-folder/job-session.ts'
import { openJob } from '../../../../src/main/services/job-folder/open-job.ts'
import { editNumber } from '../../fixtures/edit-number.ts'
import { temporaryFolder } from '../../fixtures/temporary-folder.ts'
import { workshopJob } from '../../fixtures/workshop-job.ts'

const step = fc.constantFrom('edit', 'edit', 'edit', 'undo', 'undo', 'redo', 'save', 'reopen', 'together')

async function replayed(folder: string): Promise<Replayed> {
  const path = join(folder, 'history.ndjson')
  const replay = new Replay({ path, folder })
  const lines: KeptLine[] = []
  for await (const line of linesBack(path)) lines.push(line)
  for (const line of lines.reverse()) {
    replay.take({ line, tip: { n: line.n, hash: '', at: 0, end: 0 } })
  }
  return replay.done()
}

test('a run gives the job that its history gives, and undo and redo reach as far as they would without closing', async () => {
  const parent = await temporaryFolder()
  const made = await workshopJob()
  let run = 0
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 24 }), async (steps) => {
      const folder = join(parent, String(run++))
      await cp(made.folder, folder, { recursive: true })
      // What a person expects: jobs as they were, and where in them one stands.
      const states = [made.job]
      let at = 0
      let reach = 0
      let edits = 0
      const open = (): Promise<JobSession> => openJob(folder, { mode: 'write' })
      let session = await open()
      const stand = () => ({ ...session.job, edition: 0 })
      const done = (): void => {
        at += 1
        states[at] = stand()
        reach = at
      }
      for (const one of steps) {
        if (one === 'edit' || one === 'together') {
          const many = one === 'edit' ? 1 : 3
          const numbers = Array.from({ length: many }, (_, i) => 5 * (edits + i + 1))
          edits += many
          const { job: before } = session
          await Promise.all(numbers.map((n) => session.edit(editNumber(n), 'AR')))
          expect(session.job).not.toEqual(before)
          // Of edits made together only the last state is seen from outside.
          for (let i = 1; i < many; i++) states[at + i] = { ...made.job, title: '' }
          at += many - 1
          done()
        } else if (one === 'undo') {
          if (at === 0) await expect(session.undo('AR')).rejects.toThrow('nothing to undo')
          else {
            await session.undo('AR')
            at -= 1
            if (states[at]?.title !== '') expect(stand()).toEqual({ ...states[at], edition: 0 })
          }
        } else if (one === 'redo') {
          if (at === reach) await expect(session.redo('AR')).rejects.toThrow('nothing to redo')
          else {
            await session.redo('AR')
            at += 1
            if (states[at]?.title !== '') expect(stand()).toEqual({ ...states[at], edition: 0 })
          }
        } else if (one === 'save') await session.save()
        else {
          const { job, undoName, redoName } = session
          await session.close()
          session = await open()
          expect(session.notices).toEqual([])
          expect(session.job).toEqual(job)
          expect([session.undoName, session.redoName]).toEqual([undoName, redoName])
        }
        expect(session.undoName === undefined).toBe(at === 0)
        expect(session.redoName === undefined).toBe(at === reach)
      }
      const { job } = session
      expect((await replayed(folder))?.job).toEqual(job)
      await session.close()
      expect((await replayed(folder))?.job).toEqual(job)
    }),
    { numRuns: 60 },
  )
}, 120_000)
