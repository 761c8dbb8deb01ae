import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { lookAtFolder, mendJob } from '../../../src/main/services/job-folder/mend-job.ts'
import { openJob } from '../../../src/main/services/job-folder/open-job.ts'
import { filesOf, type JobFiles, markIds, pick, putFiles, withJob } from '../fixtures/history-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'

const now = new Date('2026-03-01T08:00:00Z')

/** A job of three edits, and its files. */
async function threeEdits(): Promise<{ folder: string; files: JobFiles }> {
  const { folder } = await workshopJob()
  await withJob(folder, async (session) => {
    for (const id of ['a', 'b', 'c']) await session.edit(pick(id), 'AR')
  })
  return { folder, files: await filesOf(folder) }
}

const marks = (folder: string): Promise<string[]> =>
  withJob(folder, async (session) => {
    expect(session.notices).toEqual([])
    expect(session.writable).toBe(true)
    return markIds(session.job).slice(4)
  })

test('a sound job has nothing to mend', async () => {
  const { folder } = await threeEdits()
  expect(await lookAtFolder(folder)).toMatchObject({ trouble: null, job: { n: 3 }, history: { n: 3 } })
})

test('what a hand changed in job.json is taken as an edit of its own, and both files are kept as they were', async () => {
  const { folder, files } = await threeEdits()
  const changed = Buffer.from(files.job.toString().replace('chain ferry', 'ferry'))
  await writeFile(join(folder, 'job.json'), changed)
  expect((await lookAtFolder(folder)).trouble?.code).toBe('job-file.changed-at-the-end')
  const { kept, n } = await mendJob(folder, 'job', { by: 'AR', now })
  expect(n).toBe(4)
  expect(await readFile(join(kept, 'job.json'))).toEqual(changed)
  expect(await readFile(join(kept, 'history.ndjson'))).toEqual(files.history)
  await withJob(folder, async (session) => {
    expect(session.job.title).toBe('Drum of the ferry')
    expect(session.undoName).toBeUndefined()
    await session.edit(pick('d'), 'AR')
    await session.undo('AR')
  })
  // The lines before are still there, to be looked at.
  const lines = (await readFile(join(folder, 'history.ndjson'), 'utf8')).trimEnd().split('\n')
  expect(lines.map((line) => JSON.parse(line).n)).toEqual([0, 1, 2, 3, 4, 5, 6])
})

test('a job whose history is gone, cut short or broken goes on from job.json, or from what the history holds', async () => {
  const { folder, files } = await threeEdits()
  const lines = files.history.toString().trimEnd().split('\n')
  const cut = Buffer.from(`${lines.slice(0, 3).join('\n')}\n`)
  const hole = Buffer.from(`${lines.filter((_, i) => i !== 2).join('\n')}\n`)
  for (const [history, held] of [
    [undefined, null],
    [cut, ['a', 'b']],
    [hole, ['a']],
  ] as const) {
    await putFiles(folder, { job: files.job, ...(history === undefined ? {} : { history }) })
    const look = await lookAtFolder(folder)
    expect(look.trouble).not.toBeNull()
    await mendJob(folder, 'job', { by: 'AR', now })
    expect(await marks(folder)).toEqual(['a', 'b', 'c'])

    await putFiles(folder, { job: files.job, ...(history === undefined ? {} : { history }) })
    if (held === null) {
      expect(look.history).toHaveProperty('problem.code', 'history.none')
      await expect(mendJob(folder, 'history', { by: 'AR', now })).rejects.toThrow('there is no')
    } else {
      await mendJob(folder, 'history', { by: 'AR', now })
      expect(await marks(folder)).toEqual(held)
    }
  }
})

test('wherever mending is cut off, the job can be opened or mended', async () => {
  const { folder, files } = await threeEdits()
  const changed = Buffer.from(files.job.toString().replace('chain ferry', 'ferry'))
  await writeFile(join(folder, 'job.json'), changed)
  await mendJob(folder, 'job', { by: 'AR', now })
  const { history } = await filesOf(folder)
  // The history was written, job.json was not.
  await putFiles(folder, { job: changed, history })
  await withJob(folder, async (session) => {
    expect(session.job.title).toBe('Drum of the ferry')
    await session.edit(pick('d'), 'AR')
  })
  expect(await marks(folder)).toEqual(['a', 'b', 'c', 'd'])
})

test('nothing is mended while somebody has the job open', async () => {
  const { folder } = await threeEdits()
  const session = await openJob(folder, { mode: 'write' })
  await expect(mendJob(folder, 'history', { by: 'AR', now })).rejects.toThrow('open for writing by')
  await session.close()
  expect(await readdir(folder)).not.toContain('set-aside')
})
