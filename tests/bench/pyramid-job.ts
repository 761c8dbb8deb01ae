import { createHash } from 'node:crypto'
import { mkdir, readFile, rename, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { writeJob } from '../../src/core/job/write-job.ts'
import { HEIGHT, WIDTH } from './pyramid-scan.ts'

/** Makes a job of one sheet, with nothing on it. The scan is moved into it. @returns where the scan is then */
export async function makePyramidJob(folder: string, scan: string): Promise<string> {
  const file = basename(scan)
  const path = join(folder, 'scans', file)
  await mkdir(join(folder, 'scans'), { recursive: true })
  await rename(scan, path)
  const sha256 = createHash('sha256')
    .update(await readFile(path))
    .digest('hex')
  const page = { file, sha256, page: 1, width: WIDTH, height: HEIGHT }
  const text = writeJob({
    format: 'scantling-job',
    version: 1,
    title: 'A large scan',
    unit: 'in',
    people: [],
    instruments: [],
    sheets: [{ id: 'S1', title: 'Large sheet', record: {}, scan: page }],
    views: [],
    marks: [],
    dimensions: [],
    relations: [],
    notes: [],
  })
  await writeFile(join(folder, 'job.json'), text)
  return path
}
