import { mkdir } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import type { Job } from '../../../../core/job/model/types.ts'
import type { HeldHistory } from './held-history.ts'
import { keepFile, momentForName } from './keep-file.ts'
import type { Tip } from './kept-line.ts'
import { rescuedHistory } from './rescued-history.ts'
import { snapshotText } from './snapshot.ts'

/** What the names of folders with something rescued begin with. */
const RESCUED = 'rescued-'

/** A folder in which something rescued may lie, and what the name of that begins with there. */
export interface RescuePlace {
  within: string
  begins: string
}

/** Where what is rescued of a job is put: in its folder, else beside it, else where this machine keeps what is temporary. */
export function rescuePlaces(folder: string): RescuePlace[] {
  const beside = `${basename(folder)}-${RESCUED}`
  return [
    { within: folder, begins: RESCUED },
    { within: dirname(folder), begins: beside },
    { within: tmpdir(), begins: beside },
  ]
}

/** What was rescued, and where it lies. */
export interface Rescued {
  path: string
  /** The last edit that is in it. */
  n: number
  /** The first edit that its history still tells; one more than n: none. null: the history is whole. */
  begins: number | null
}

/**
 * Writes what a session holds beside the job: its document and its history, which belong together. Where the folder can't
 * be written it is tried beside it, and then where this machine keeps what is temporary.
 * @param held what is still known of the history up to `tip`
 * @returns null where no folder could be written
 */
export async function rescue(
  folder: string,
  job: Job,
  tip: Tip,
  held: HeldHistory,
  now: Date,
): Promise<Rescued | null> {
  const history = rescuedHistory(job, tip, held, now.toISOString())
  for (const { within, begins } of rescuePlaces(folder)) {
    const path = join(within, `${begins}${momentForName(now)}`)
    try {
      // Not what is above it: a folder that is gone must not come back holding this alone.
      await mkdir(path)
      await keepFile(path, 'history.ndjson', history.bytes)
      await keepFile(path, 'job.json', Buffer.from(snapshotText(history.job, history.tip)))
      return { path, n: history.tip.n, begins: history.begins }
    } catch {
      // The next place is tried.
    }
  }
  return null
}
