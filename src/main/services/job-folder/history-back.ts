import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { readEdit } from '../../../core/job/edits/edit.ts'
import type { HistoryLine } from '../../../core/job/history/history-line.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { readJob } from '../../../core/job/read-job.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { exists } from '../files/exists.ts'
import { beforeHistoryFolder, historyFile } from '../job-layout/job-layout.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'
import { openForReading } from './history/history-handle.ts'
import { type BeginLine, isBegin, type KeptLine } from './history/kept-line.ts'
import { mayBegin, sha256 } from './history/line-text.ts'
import { linesBack } from './history/lines-back.ts'
import { openJobFolder } from './read-job-folder.ts'

/** Where a history began, or began anew: the job as it stood then. */
export interface Began {
  n: number
  began: Job
  /** Who began it, and when; nobody did where it was carried over from the form before. */
  by?: string
  at?: string
  /** When it was carried over from the form before, where it was. */
  carried?: string
  /** Whether lines come before it. */
  anew: boolean
}

/** Takes the lines in which any of some pieces of text stands, and every beginning. */
const looksFor =
  (pieces: () => ReadonlySet<string> | null) =>
  (bytes: Buffer): boolean => {
    const wanted = pieces()
    if (wanted === null || mayBegin(bytes)) return true
    for (const piece of wanted) if (bytes.includes(piece)) return true
    return false
  }

/** Whether a history was made of a job of the form before: its files are kept as they were then. */
async function isCarried(folder: string, { from, previous }: BeginLine): Promise<boolean> {
  if (from === null || previous !== null) return false
  const kept = await readFile(join(beforeHistoryFolder(folder), 'job.json')).catch(() => undefined)
  return kept !== undefined && sha256(kept) === from
}

/** The beginning in a line. Whoever opened a job of the form before, and wherever the line stands, did nothing in it. */
async function begun(line: BeginLine, folder: string): Promise<Began> {
  const { n, at, by, previous } = line
  const made = (await isCarried(folder, line)) ? { carried: at } : { at, by }
  return { n, ...made, began: readJob(line.begin), anew: previous !== null }
}

/** What is in a line. @throws ServiceError when an edit in it is none that this program knows */
async function understood(line: KeptLine, folder: string, path: string): Promise<HistoryLine | Began> {
  const { n, at, by } = line
  try {
    if (isBegin(line)) return await begun(line, folder)
    const { undoes, redoes } = line
    return {
      n,
      at,
      by,
      edit: readEdit(line.edit),
      back: readEdit(line.back),
      ...(undoes === undefined ? {} : { undoes }),
      ...(redoes === undefined ? {} : { redoes }),
    }
  } catch (error) {
    if (!(error instanceof ScantlingError)) throw error
    throw new ServiceError(reason('history.line-not-understood', { path, n, problem: error.reason }))
  }
}

/** The same of a folder of the form before, whose last edits are in its journal; it is not changed. */
async function* ofFormBefore(folder: string): AsyncGenerator<HistoryLine | Began> {
  const { history } = await openJobFolder(folder, openForReading, false)
  if (history.form === 'history') {
    await history.handle.close()
    yield* historyBack(folder)
    return
  }
  yield* history.lines.toReversed()
  yield { n: history.document.edition ?? 0, began: history.document, anew: false }
}

/**
 * The history of a job folder from its newest line back to where it began, which comes last. Reads only, also while
 * somebody has the folder open, and holds no more than a few lines at a time.
 * @param pieces lines that hold none of them may be left out; looked at anew before each line, for they may change while
 *   it is read. null: no line is left out
 * @throws ServiceError when it can't be read
 */
export async function* historyBack(
  folder: string,
  pieces: () => ReadonlySet<string> | null = () => null,
): AsyncGenerator<HistoryLine | Began> {
  const path = historyFile(folder)
  if (!(await exists(path))) {
    yield* ofFormBefore(folder)
    return
  }
  for await (const line of linesBack(path, looksFor(pieces))) yield await understood(line, folder, path)
}
