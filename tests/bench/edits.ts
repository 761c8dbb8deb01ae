/** What an edit costs beside the disk, how replaying grows, and how a large job is read. Run by `npm run bench`. */
import { cp, open, rm, stat } from 'node:fs/promises'
import { loadavg } from 'node:os'
import { join } from 'node:path'
import { pixel } from '../../src/core/geometry/frames.ts'
import { applyEdit, type Edit, readEdit } from '../../src/core/job/edits/edit.ts'
import type { Job, Mark } from '../../src/core/job/model/types.ts'
import { parseJobText } from '../../src/core/job/parse-job-text.ts'
import { writeJob } from '../../src/core/job/write-job.ts'
import type { JobSession } from '../../src/main/services/job-folder/job-session.ts'
import { openJob } from '../../src/main/services/job-folder/open-job.ts'
import { jobOfManySheets, writeFolder } from './large-folder.ts'

const WHO = 'Ada Quill'
const ROUNDS = 40
const SCAN = 1_000_000

const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b)
const at = (values: readonly number[], share: number): number =>
  sorted(values)[Math.floor(share * (values.length - 1))] ?? Number.NaN
const median = (values: readonly number[]): number => at(values, 0.5)
const spread = (values: readonly number[]): string =>
  `${median(values).toFixed(2)} ms (95 in 100: ${at(values, 0.95).toFixed(2)})`

async function took(run: () => unknown): Promise<{ clock: number; cpu: number }> {
  const [before, start] = [process.cpuUsage(), performance.now()]
  await run()
  const clock = performance.now() - start
  const { user, system } = process.cpuUsage(before)
  return { clock, cpu: (user + system) / 1000 }
}

const point = (id: string): Mark => ({
  id,
  sheet: 'S1',
  how: 'hand',
  sigma: 1,
  kind: 'point',
  pixel: pixel(10, 20),
})

/** The edits of one round, as a day's work has them. */
const edits = (i: number): Edit[] => [
  { do: 'add-mark', item: point(`new${i}`) },
  { do: 'change-mark', id: `M${i + 1}`, set: { sigma: 1.5 } },
  { do: 'repeat-pick', mark: `new${i}`, pixel: pixel(11, 20) },
  { do: 'add-evidence', dimension: `d${i}`, item: { id: `n${i}`, basis: 'printed', text: '3 1/2"' } },
  { do: 'adopt', dimension: `d${i}`, adopt: 'scaled' },
  { do: 'withdraw-evidence', dimension: `d${i}`, id: `n${i}`, why: 'misread' },
  { do: 'rename-dimension', name: `d${i}`, to: `other${i}` },
  {
    do: 'add-note',
    item: { id: `N${i}`, sheet: 'S1', outline: [pixel(1, 1)], text: 'A rivet is drawn here.' },
  },
]

/** Edits of a session on disk, and beside each the time that as many bytes take to be written and synced. */
async function session(size: { dimensions: number; sheets: number; views: number }): Promise<void> {
  const job = jobOfManySheets(size)
  const folder = await writeFolder(job, 1000)
  const [opened, beside] = [await openJob(folder, { mode: 'write' }), await open(join(folder, 'beside'), 'w')]
  const history = join(folder, 'history.ndjson')
  const [all, more, core]: [number[], number[], number[]] = [[], [], []]
  await opened.edit({ do: 'describe', set: { title: 'Begun' } }, WHO)
  let plain = opened.job
  for (let i = 0; i < ROUNDS; i++) {
    for (const edit of edits(i)) {
      const before = (await stat(history)).size
      const { clock } = await took(() => opened.edit(readEdit(edit), WHO))
      const bytes = Buffer.alloc((await stat(history)).size - before, 'x')
      const disk = await took(async () => {
        await beside.write(bytes)
        await beside.sync()
      })
      all.push(clock)
      more.push(clock - disk.clock)
      const applied = await took(() => {
        plain = applyEdit(plain, readEdit(edit)).job
      })
      core.push(applied.clock)
    }
  }
  await beside.close()
  await opened.close()
  await rm(folder, { recursive: true })
  const { dimensions, marks, views, sheets } = job
  console.log(
    `${all.length} edits of ${dimensions.length} dimensions, ${marks.length} marks, ${views.length} views, ${sheets.length} sheets:`,
  )
  console.log(`  acknowledged after ${spread(all)}`)
  console.log(`  more than one fsync of as many bytes: ${spread(more)}`)
  console.log(`  of that applying it: ${spread(core)}`)
}

/** A folder whose history holds so many additions of marks that its job.json does not, as a killed process leaves it. */
async function killedAfter(additions: number): Promise<string> {
  const folder = await writeFolder(jobOfManySheets({ dimensions: 10, sheets: 1, views: 1 }), 1000)
  const opened: JobSession = await openJob(folder, { mode: 'write' })
  const marks = Array.from({ length: additions }, (_, i) => point(`new${i}`))
  await Promise.all(marks.map((item) => opened.edit({ do: 'add-mark', item }, WHO)))
  const left = `${folder}-left`
  await cp(folder, left, { recursive: true, filter: (path) => !path.endsWith('.lock') })
  await opened.close()
  await rm(folder, { recursive: true })
  return left
}

async function replay(): Promise<void> {
  const counts = [4000, 8000] as const
  const folders = await Promise.all(counts.map(killedAfter))
  const times: [number[], number[]] = [[], []]
  for (let i = 0; i < 7; i++) {
    for (const [which, folder] of folders.entries()) {
      const { cpu } = await took(() => openJob(folder, { mode: 'read' }))
      if (i > 1) times[which]?.push(cpu)
    }
  }
  for (const folder of folders) await rm(folder, { recursive: true })
  const [one, two] = [median(times[0]), median(times[1])]
  console.log(
    `opened after a kill, with ${counts.join(' and ')} additions of marks to make: ${one.toFixed(0)} and ${two.toFixed(0)} ms of the processor, ${(two / one).toFixed(2)} times (to be at most 2.2)`,
  )
}

async function notes(job: Job): Promise<void> {
  const several = (count: number): Edit => ({
    do: 'several',
    name: 'notes',
    edits: Array.from({ length: count }, (_, i) => ({
      do: 'add-note',
      item: { id: `several${i}`, sheet: 'S1', outline: [pixel(1, 1)], text: 'A rivet is drawn here.' },
    })),
  })
  const times: [number[], number[]] = [[], []]
  for (let i = 0; i < 5; i++) {
    for (const [which, count] of [10_000, 20_000].entries()) {
      const edit = several(count)
      times[which]?.push((await took(() => applyEdit(job, readEdit(edit)))).cpu)
    }
  }
  const [one, two] = [median(times[0]), median(times[1])]
  console.log(
    `10,000 and 20,000 notes in one edit: ${one.toFixed(0)} and ${two.toFixed(0)} ms of the processor, ${(two / one).toFixed(2)} times`,
  )
}

async function reading(job: Job): Promise<void> {
  const text = writeJob(job)
  const folder = await writeFolder(job, SCAN)
  const first = await took(() => openJob(folder, { mode: 'read' }))
  const again = await took(() => openJob(folder, { mode: 'read' }))
  const parsed = await took(() => parseJobText(text))
  await rm(folder, { recursive: true })
  const said = ({ clock, cpu }: { clock: number; cpu: number }): string =>
    `${(clock / 1000).toFixed(2)} s (${(cpu / 1000).toFixed(2)} s of the processor)`
  console.log(
    `the largest opened, job.json of ${(text.length / 1e6).toFixed(1)} MB and scans of ${(job.sheets.length * SCAN) / 1e6} MB: ${said(first)}, again ${said(again)} (to be under 3 s)`,
  )
  console.log(`  of that reading job.json, again: ${said(parsed)}`)
}

console.log(
  `load ${loadavg()
    .map((one) => one.toFixed(1))
    .join(' ')}`,
)
const largest = { dimensions: 10_000, sheets: 100, views: 40 }
await reading(jobOfManySheets(largest))
await session({ dimensions: 1000, sheets: 1, views: 3 })
await session(largest)
await replay()
await notes(jobOfManySheets({ dimensions: 1000, sheets: 1, views: 3 }))
