import { readdir, realpath } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { ListedJob, ListedJobs } from '../../../contract/jobs.ts'
import { exists } from '../files/exists.ts'
import { jobFile } from '../job-layout/job-layout.ts'
import { placeInWords } from '../known-jobs/place-in-words.ts'
import type { RecentJobs } from '../known-jobs/recent-jobs.ts'

/** Common practice, no source: more than anybody reads through. */
const MOST = 500

const NAMES = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

/** The job folders on the shelf, links followed. */
async function onShelf(shelf: string): Promise<string[]> {
  const names = await readdir(shelf).catch(() => [])
  const folders = names.filter((name) => !name.startsWith('.')).map((name) => join(shelf, name))
  const jobs = await Promise.all(folders.map(async (one) => ((await exists(jobFile(one))) ? one : undefined)))
  const found = jobs.filter((one) => one !== undefined).sort(NAMES.compare)
  return Promise.all(found.slice(0, MOST).map((one) => realpath(one).catch(() => one)))
}

/** Every job on the shelf, and those that were open before, the last one first; each once. */
export async function listJobs(recent: RecentJobs, shelf: string): Promise<ListedJobs> {
  const before = await Promise.all(
    (await recent.list()).map(async ({ id, title, place, openedAt }): Promise<ListedJob> => {
      const folder = recent.folderOf(id)
      const isGone = folder === undefined || !(await exists(jobFile(folder)))
      return { id, title, place, openedAt, ...(isGone ? { isGone } : {}) }
    }),
  )
  const listed = new Set(before.map(({ id }) => id))
  const others = (await onShelf(shelf))
    .map((folder) => ({ id: recent.idOf(folder), title: basename(folder), place: placeInWords(folder) }))
    .filter(({ id }) => !listed.has(id))
  return { shelf: placeInWords(shelf), jobs: [...before, ...others] }
}
