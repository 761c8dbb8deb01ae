import { type open, readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, expect, test, vi } from 'vitest'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { point } from '../fixtures/picked-point.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

let full = false

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof import('node:fs/promises')>()
  const guarded: typeof open = async (path, ...rest) => {
    const handle = await real.open(path, ...rest)
    if (full && String(path).endsWith('.tmp')) {
      handle.writeFile = () => Promise.reject(Object.assign(new Error('ENOSPC'), { code: 'ENOSPC' }))
    }
    return handle
  }
  return { ...real, open: guarded }
})

afterEach(() => {
  full = false
})

test('when job.json can not be written for want of room, it stays as it was and every edit is in the history', async () => {
  const { folder } = await workshopJob()
  const before = await readFile(join(folder, 'job.json'), 'utf8')
  const session = await openJob(folder, { mode: 'write' })
  await session.edit({ do: 'add-mark', item: point('M5', 1, 2) }, 'AR')
  full = true
  await expect(session.save()).rejects.toThrow(
    /job\.json could not be written because the disk is full; every edit is safe in the history beside it\.$/,
  )
  expect(session.writable).toBe(true)
  await expect(session.close()).rejects.toThrow('the disk is full')
  expect(await readFile(join(folder, 'job.json'), 'utf8')).toBe(before)
  expect((await readdir(folder)).sort()).toEqual(['.cache', 'history.ndjson', 'issued', 'job.json', 'scans'])

  full = false
  const again = await openJob(folder, { mode: 'write' })
  expect(again.job.marks.at(-1)?.id).toBe('M5')
  await again.close()
  expect(await readFile(join(folder, 'job.json'), 'utf8')).toContain('"M5"')
})
