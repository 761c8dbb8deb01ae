import { spawn } from 'node:child_process'
import { cp, readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { uniformInt } from 'pure-rand/distribution/uniformInt'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Job } from '../../../src/core/job/model/types.ts'
import { readJob } from '../../../src/core/job/read-job.ts'
import { openForReading } from '../../../src/main/services/job-folder/history/history-handle.ts'
import { readTail } from '../../../src/main/services/job-folder/history/read-tail.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { type BundledProgram, bundleProgram } from '../fixtures/bundle-program.ts'
import { jobsAfterRequests, PICKED } from '../fixtures/edit-number.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const EDITS = 1000
const KILLS = 100
/** A writer begins at one of so many places in the list, so that not each has to come all the way. */
const BEGINNINGS = 10
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

interface Task {
  /** How far the writer is to come. */
  edits: number
  saveEvery: number
  together: number
}

/** Runs the writer; kills it `delay` ms after it acknowledged `killAfter`, or not at all. */
function runWriter(
  folder: string,
  { edits, saveEvery, together }: Task,
  killAfter?: number,
  delay = 0,
): Promise<Run> {
  return new Promise((resolve) => {
    const args = [writer.path, folder, String(edits), String(saveEvery), String(together)]
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

/** The lines of a history, each seen to go on from the one before it, to the end of the file. */
async function wholeChain(folder: string): Promise<object> {
  const handle = await openForReading(join(folder, 'history.ndjson'))
  try {
    let from: number | undefined
    const { tip, torn, broken } = await readTail(handle, null, ({ line }) => {
      from ??= line.n
    })
    return { from, to: tip.n, ...(torn && { torn }), ...(broken && { broken }) }
  } finally {
    await handle.close()
  }
}

/** Without who picked again, when and in which sitting: the clock of the writer says that. */
const unstamped = (job: Job | undefined): unknown =>
  job && { ...job, marks: job.marks.map(({ repeatedBy: _, picks: __, sitting: ___, ...mark }) => mark) }

test(
  `of ${KILLS} writers killed at random points of ${EDITS} edits, undos and redos, not one lost an acknowledged edit, and every chain is whole`,
  async () => {
    const original = await workshopJob((job) => ({
      ...job,
      marks: job.marks.map((mark) => ({ ...mark, ...PICKED })),
    }))
    const states = jobsAfterRequests(original.job, EDITS)
    const random = xoroshiro128plus(SEED)
    const parent = await temporaryFolder()
    const apart = EDITS / BEGINNINGS
    const begun = (from: number): string => join(parent, `from-${from}`)
    await cp(original.folder, begun(0), { recursive: true })
    for (let from = apart; from < EDITS; from += apart) {
      await cp(begun(from - apart), begun(from), { recursive: true })
      expect(await runWriter(begun(from), { edits: from, saveEvery: 50, together: 8 })).toMatchObject({
        closed: true,
      })
    }
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
      const from = Math.floor(killAfter / apart) * apart
      await cp(begun(from), folder, { recursive: true })
      // A third of the writers save after every second edit, so that many kills fall into a save.
      const saveEvery = kill % 3 === 0 ? 2 : kill % 3 === 1 ? 50 : 0
      const together = kill % 2 === 0 ? 1 : 8
      const run = await runWriter(folder, { edits: EDITS, saveEvery, together }, killAfter, delay)
      expect(run.errors).toBe('')
      expect(run.acknowledged).toEqual(run.acknowledged.map((_, i) => from + i + 1))
      const last = run.acknowledged.at(-1) ?? from
      expect(last).toBeGreaterThanOrEqual(killAfter)

      if (!run.closed) expect(await readdir(folder)).toContain('.lock')
      strayTemporaries += (await readdir(folder)).filter((name) => name.endsWith('.tmp')).length
      const session = await openJob(folder, { mode: 'write' })
      expect(session.writable).toBe(true)
      if (!run.closed) expect(session.notices[0]?.code).toBe('lock.taken-over')
      tornTails += session.notices.filter(({ code }) => code === 'history.torn').length
      if (saveEvery === 2) partlySaved += 1

      const kept = session.job.edition ?? 0
      acknowledged += run.acknowledged.length
      lost += Math.max(0, last - kept)
      onDiskUnacknowledged += Math.max(0, kept - last)
      // What was asked for together may be on disk as one; alone, at most the one edit being written.
      expect(kept - last, `kill ${kill}`).toBeLessThanOrEqual(together)
      expect(kept, `kill ${kill}`).toBeGreaterThanOrEqual(last)
      expect(unstamped(session.job)).toEqual(unstamped(states[kept]))
      expect(() => readJob(session.job)).not.toThrow()

      await session.close()
      const chain = await wholeChain(folder)
      expect(chain, `kill ${kill}`).toEqual({ from: 0, to: kept })
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
        `${tornTails} torn lines set aside, ${partlySaved} writers that saved after every second edit`,
    )
    expect(lost).toBe(0)
  },
  TIME_ALLOWED,
)

test('a writer that is left alone makes all its edits, and the next one goes on after a kill', async () => {
  const { folder, job } = await workshopJob((given) => ({
    ...given,
    marks: given.marks.map((mark) => ({ ...mark, ...PICKED })),
  }))
  const first = await runWriter(folder, { edits: EDITS, saveEvery: 50, together: 1 }, 200)
  expect(first.closed).toBe(false)
  const second = await runWriter(folder, { edits: EDITS, saveEvery: 50, together: 8 })
  expect(second.errors).toBe('')
  expect(second.closed).toBe(true)
  const session = await openJob(folder, { mode: 'read' })
  expect(session.job.edition).toBe(EDITS)
  expect(unstamped(session.job)).toEqual(unstamped(jobsAfterRequests(job, EDITS).at(-1)))
})
