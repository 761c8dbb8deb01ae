/**
 * What the history of a job costs, in one run: opening with few and with many edits behind it, edits that no job.json holds
 * yet after a kill, and an edit beside the fsync that it waits for.
 */
import { cp, mkdtemp, open, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { pixel } from '../../src/core/geometry/frames.ts'
import type { Edit } from '../../src/core/job/edits/edit.ts'
import { createJob } from '../../src/main/services/job-folder/create-job.ts'
import { openJob } from '../../src/main/services/job-folder/open-job.ts'
import { largeJob } from './large-job.ts'

const BY = 'AR'
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0
const ms = (value: number): string => `${value.toFixed(1)} ms`

async function timed(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

const parent = await mkdtemp(join(tmpdir(), 'scantling-bench-'))

/** A job folder with so many dimensions. */
async function jobOf(dimensions: number): Promise<string> {
  const scan = join(parent, `plate-${dimensions}.png`)
  const create = { width: 64, height: 64, channels: 3 as const, background: { r: 220, g: 220, b: 220 } }
  await sharp({ create }).toFile(scan)
  const folder = join(parent, `job-${dimensions}`)
  await createJob(folder, [scan], ([added]) => {
    const job = largeJob(dimensions)
    const sheets = job.sheets.map((sheet) => ({ ...sheet, scan: added?.scan ?? sheet.scan }))
    return { ...job, people: [{ id: BY, name: 'A. Rivet' }], sheets }
  })
  return folder
}

const title = (n: number): Edit => ({
  do: 'describe',
  set: { title: `Plate, state ${String(n).padStart(7)}` },
})

async function behind(folder: string, edits: number): Promise<void> {
  const session = await openJob(folder, { mode: 'write' })
  for (let n = 0; n < edits; n += 500) {
    const group = Array.from({ length: Math.min(500, edits - n) }, (_, i) => title(n + i))
    await Promise.all(group.map((edit) => session.edit(edit, BY)))
  }
  await session.close()
}

async function opening(folder: string): Promise<number> {
  const times: number[] = []
  for (let i = 0; i < 15; i++) {
    times.push(
      await timed(async () => {
        const session = await openJob(folder, { mode: 'write' })
        await session.close()
      }),
    )
  }
  return median(times)
}

const [few, many] = [100, 100_000]
const short = await jobOf(100)
const long = join(parent, 'long')
await cp(short, long, { recursive: true })
await behind(short, few)
await behind(long, many)
const [a, b] = [await opening(short), await opening(long)]
console.log(`opening with ${few} edits behind: ${ms(a)}; with ${many}: ${ms(b)}; ratio ${(b / a).toFixed(2)}`)

/** What a kill leaves: job.json as it was, and marks that were added since. */
async function afterKill(count: number): Promise<number> {
  const folder = join(parent, `killed-${count}`)
  await cp(short, folder, { recursive: true })
  const document = await readFile(join(folder, 'job.json'))
  const session = await openJob(folder, { mode: 'write' })
  for (let n = 0; n < count; n += 500) {
    const group = Array.from(
      { length: 500 },
      (_, i): Edit => ({
        do: 'add-mark',
        item: { id: `K${n + i}`, sheet: 'S1', how: 'hand', sigma: 1, kind: 'point', pixel: pixel(10, 20) },
      }),
    )
    await Promise.all(group.map((edit) => session.edit(edit, BY)))
  }
  await session.close()
  await writeFile(join(folder, 'job.json'), document)
  const times: number[] = []
  for (let i = 0; i < 3; i++) {
    times.push(
      await timed(async () => {
        const again = await openJob(folder, { mode: 'read' })
        if (again.job.marks.length < count) throw new Error('marks are missing')
        await again.close()
      }),
    )
  }
  return median(times)
}

const [half, whole] = [await afterKill(4000), await afterKill(8000)]
console.log(
  `mark additions after a kill: 4000 ${ms(half)}, 8000 ${ms(whole)}; ratio ${(whole / half).toFixed(2)}`,
)

for (const dimensions of [1000, 10_000]) {
  const folder = await jobOf(dimensions)
  const first = await timed(async () => (await openJob(folder, { mode: 'read' })).close())
  const session = await openJob(folder, { mode: 'write' })
  const handle = await open(join(parent, 'beside'), 'w')
  const edits: number[] = []
  const syncs: number[] = []
  for (let i = 0; i < 120; i++) {
    const name = session.job.dimensions[(i * 37) % dimensions]?.name ?? ''
    const edit: Edit = { do: 'change-dimension', name, set: { note: `Looked at ${i}` } }
    edits.push(await timed(() => session.edit(edit, BY)))
    // As many bytes as a line of the history has, and an fsync: what an acknowledgement waits for in any case.
    syncs.push(
      await timed(async () => {
        await handle.write(Buffer.alloc(600, 0x61), 0, 600, i * 600)
        await handle.sync()
      }),
    )
  }
  await handle.close()
  await session.close()
  const [edit, sync] = [median(edits), median(syncs)]
  const kinds = `${dimensions} dimensions, ${session.job.marks.length} marks, ${session.job.views.length} views`
  console.log(
    `${kinds}: opened in ${ms(first)}; an edit ${ms(edit)}, an fsync ${ms(sync)}, beyond it ${ms(edit - sync)}`,
  )
}
await rm(parent, { recursive: true })
