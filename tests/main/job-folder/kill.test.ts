import { spawn } from 'node:child_process'
import { cp, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { type BundledProgram, bundleProgram } from '../fixtures/bundle-program.ts'
import { editNumber, PICKED } from '../fixtures/edit-number.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const EDITS = 500
const KILLS = 50
const SEED = 20260301
const AT_ONCE = 3
const TIME_ALLOWED = 400_000

let writer: BundledProgram
beforeAll(async () => {
  writer = await bundleProgram('tests/main/fixtures/edit-writer.ts', true)
})
afterAll(() => writer.remove())

interface Plan {
  kill: number
  /** Kill once so many edits are acknowledged, */
  killAfter: number
  /** and so many milliseconds later. */
  delay: number
}

interface Run {
  acknowledged: number[]
  closed: boolean
  errors: string
  signal: string | null
}

/** Runs the writer; kills it `delay` ms after it acknowledged `killAfter`, or not at all. */
function runWriter(
  folder: string,
  saveEvery: number,
  together: number,
  killAfter?: number,
  delay = 0,
): Promise<Run> {
  return new Promise((resolve) => {
    const args = [writer.path, folder, String(EDITS), String(saveEvery), String(together)]
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] })
    let output = ''
    let errors = ''
    let killed = false
    child.stderr.on('data', (data: Buffer) => {
      errors += data.toString()
    })
    child.stdout.on('data', (data: Buffer) => {
      output += data.toString()
      if (killed || killAfter === undefined) return
      const last = output.slice(0, output.lastIndexOf('\n')).split('\n').at(-1) ?? ''
      if (Number(last) < killAfter && last !== 'closed') return
      if (last === 'open' && killAfter > 0) return
      killed = true
      // A busy wait: timers of a millisecond are too coarse to hit the middle of a write.
      const end = performance.now() + delay
      while (performance.now() < end);
      child.kill('SIGKILL')
    })
    child.on('close', (_, signal) => {
      const whole = output
        .slice(0, output.lastIndexOf('\n') + 1)
        .trim()
        .split('\n')
      resolve({
        acknowledged: whole.filter((line) => /^\d+$/.test(line)).map(Number),
        closed: whole.includes('closed'),
        errors,
        signal,
      })
    })
  })
}

/** Without who picked again and when: the clock of the writer says that. */
const unstamped = (job: Job | undefined): unknown =>
  job && { ...job, marks: job.marks.map(({ repeatedBy: _, ...mark }) => mark) }

test(
  `of ${KILLS} writers killed at random points of ${EDITS} edits, not one lost an acknowledged edit`,
  async () => {
    const original = await workshopJob((job) => ({
      ...job,
      marks: job.marks.map((mark) => ({ ...mark, ...PICKED })),
    }))
    const states: Job[] = [original.job]
    for (let n = 1; n <= EDITS; n++) {
      const { job } = applyEdit(states[n - 1] ?? original.job, editNumber(n))
      states.push({ ...job, edition: n })
    }

    const random = xoroshiro128plus(SEED)
    const parent = await temporaryFolder()
    let acknowledged = 0
    let lost = 0
    let onDiskUnacknowledged = 0
    let strayTemporaries = 0
    let tornTails = 0
    let partlySaved = 0
    const plans = Array.from({ length: KILLS }, (_, kill) => ({
      kill,
      killAfter: uniformInt(random, 0, EDITS - 1),
      delay: uniformInt(random, 0, 4000) / 1000,
    }))
    const killOne = async ({ kill, killAfter, delay }: Plan): Promise<void> => {
      const folder = join(parent, String(kill))
      await cp(original.folder, folder, { recursive: true })
      // A third of the writers save after every second edit, so that many kills fall into a save.
      const saveEvery = kill % 3 === 0 ? 2 : kill % 3 === 1 ? 50 : 0
      const together = kill % 2 === 0 ? 1 : 8
      const run = await runWriter(folder, saveEvery, together, killAfter, delay)
      expect(run.errors).toBe('')
      expect(run.acknowledged).toEqual(run.acknowledged.map((_, i) => i + 1))
      expect(run.acknowledged.length).toBeGreaterThanOrEqual(killAfter)

      if (!run.closed) expect(await readdir(folder)).toContain('.lock')
      strayTemporaries += (await readdir(folder)).filter((name) => name.endsWith('.tmp')).length
      const session = await openJob(folder, { mode: 'write' })
      expect(session.writable).toBe(true)
      if (!run.closed) expect(session.notices[0]?.code).toBe('lock.taken-over')
      tornTails += session.notices.filter(({ code }) => code === 'journal.torn-line').length
      if (saveEvery === 2) partlySaved += 1

      const kept = session.job.edition ?? 0
      acknowledged += run.acknowledged.length
      lost += Math.max(0, run.acknowledged.length - kept)
      onDiskUnacknowledged += Math.max(0, kept - run.acknowledged.length)
      // What was asked for together may be on disk as one; alone, at most the one edit being written.
      expect(kept - run.acknowledged.length, `kill ${kill}`).toBeLessThanOrEqual(together)
      expect(kept, `kill ${kill}`).toBeGreaterThanOrEqual(run.acknowledged.length)
      expect(unstamped(session.job)).toEqual(unstamped(states[kept]))
      expect(() => readJob(session.job)).not.toThrow()

      await session.close()
      expect((await readdir(folder)).sort()).toEqual(
        expect.arrayContaining(['.cache', 'issued', 'job.json', 'scans']),
      )
      expect(
        (await readdir(folder)).filter((name) => name.startsWith('.lock') || name.endsWith('.tmp')),
      ).toEqual([])
      const again = await openJob(folder, { mode: 'read' })
      expect(again.job).toEqual(session.job)
      await rm(folder, { recursive: true })
    }
    const waiting = [...plans]
    const killInTurn = async (): Promise<void> => {
      for (let plan = waiting.shift(); plan !== undefined; plan = waiting.shift()) await killOne(plan)
    }
    await Promise.all(Array.from({ length: AT_ONCE }, killInTurn))
    console.log(
      `kill test: ${KILLS} kills, ${acknowledged} edits acknowledged, ${lost} lost, ` +
        `${onDiskUnacknowledged} on disk but not yet acknowledged, ${strayTemporaries} half-written job.json and ` +
        `${tornTails} torn journal lines cleared away, ${partlySaved} writers that saved after every second edit`,
    )
    expect(lost).toBe(0)
  },
  TIME_ALLOWED,
)

test('a writer that is left alone makes all its edits, and the next one goes on after a kill', async () => {
  const { folder } = await workshopJob()
  const first = await runWriter(folder, 50, 1, 200)
  expect(first.closed).toBe(false)
  const second = await runWriter(folder, 50, 8)
  expect(second.errors).toBe('')
  expect(second.closed).toBe(true)
  const session = await openJob(folder, { mode: 'read' })
  expect(session.job.edition).toBe(EDITS)
  expect(session.job.title).toBe(`Drum, state ${EDITS} – Ø 7 ½`)
})
