import { mkdir } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import type { Job } from '../../../../core/job/model/types.ts'
import { beginHistory } from './begin-history.ts'
import { keepFile, momentForName } from './keep-file.ts'
import type { Tip } from './kept-line.ts'
import { snapshotText } from './snapshot.ts'

/** What the names of folders with something rescued begin with. */
export const RESCUED = 'rescued-'

/**
 * Writes what a session holds beside the job: its document and its history, which belong together. Where the folder can't
 * be written it is tried beside it, and then where this machine keeps what is temporary.
 * @param history all that was acknowledged; null: it is gone, and one is begun with the job as it is in memory
 * @returns the folder; null where none could be written
 */
export async function rescue(
  folder: string,
  job: Job,
  tip: Tip,
  history: Buffer | null,
  now: Date,
): Promise<string | null> {
  const begun = history === null ? beginHistory(job, { at: now.toISOString(), by: '', from: null }) : null
  const name = `${RESCUED}${momentForName(now)}`
  const places = [
    join(folder, name),
    join(dirname(folder), `${basename(folder)}-${name}`),
    join(tmpdir(), `${basename(folder)}-${name}`),
  ]
  for (const place of places) {
    try {
      // Not what is above it: a folder that is gone must not come back holding this alone.
      await mkdir(place)
      await keepFile(place, 'history.ndjson', history ?? Buffer.from(begun?.text ?? ''))
      await keepFile(place, 'job.json', Buffer.from(snapshotText(begun?.job ?? job, begun?.tip ?? tip)))
      return place
    } catch {
      // The next place is tried.
    }
  }
  return null
}
