/** A folder with a large job and its scans. All of it is invented and only timed. */
import { createHash, randomBytes } from 'node:crypto'
import { mkdir, mkdtemp, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pixel } from '../../src/core/geometry/frames.ts'
import type { Job, Mark, Sheet, View } from '../../src/core/job/model/types.ts'
import { writeJob } from '../../src/core/job/write-job.ts'
import { largeJob } from './large-job.ts'

/** A large job with further sheets, and views on them, each with a figured size. */
export function jobOfManySheets(size: { dimensions: number; sheets: number; views: number }): Job {
  const job = largeJob(size.dimensions)
  const [first] = job.sheets
  if (first === undefined) throw new RangeError('A large job has a sheet.')
  const sheets = Array.from({ length: size.sheets - 1 }, (_, i): Sheet => {
    const id = `S${i + 2}`
    return { ...first, id, title: `Sheet ${i + 2}`, scan: { ...first.scan, file: `${id}.png` } }
  })
  const marks: Mark[] = []
  const views: View[] = []
  for (let v = job.views.length; v < size.views; v++) {
    const sheet = sheets[v % sheets.length]?.id ?? first.id
    const ends = [`V${v + 1}a`, `V${v + 1}b`] as [string, string]
    for (const [i, id] of ends.entries()) {
      marks.push({ id, sheet, how: 'hand', sigma: 1, kind: 'point', pixel: pixel(100 + 900 * i, 100) })
    }
    const references = [{ id: 'R1', kind: 'distance' as const, marks: ends, size: '150 mm' }]
    views.push({ id: `V${v + 1}`, sheet, name: `View ${v + 1}`, mapping: 'uniform', references })
  }
  return {
    ...job,
    sheets: [...job.sheets, ...sheets],
    views: [...job.views, ...views],
    marks: [...job.marks, ...marks],
  }
}

/**
 * Writes a job into a folder of its own, with a scan of so many bytes for each sheet.
 *
 * @returns the folder
 */
export async function writeFolder(job: Job, bytesOfScan: number): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'scantling-bench-'))
  const scans = join(folder, 'scans')
  await mkdir(scans)
  const bytes = randomBytes(bytesOfScan)
  const sheets: Sheet[] = []
  for (const [i, sheet] of job.sheets.entries()) {
    bytes.writeUInt32LE(i)
    await writeFile(join(scans, sheet.scan.file), bytes)
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    sheets.push({ ...sheet, scan: { ...sheet.scan, sha256 } })
  }
  await writeFile(join(folder, 'job.json'), writeJob({ ...job, sheets }))
  return folder
}
