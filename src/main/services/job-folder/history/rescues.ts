import { readdir } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import type { Job } from '../../../../core/job/model/types.ts'
import { historyFile, jobFile } from '../../job-layout/job-layout.ts'
import { lineAt } from './find-line.ts'
import { openForReading } from './history-handle.ts'
import { isBegin } from './kept-line.ts'
import { hashAtEnd, mayBegin, readLine } from './line-text.ts'
import { readDocument } from './read-document.ts'
import { orProblem, readWhole, type WholeHistory } from './read-whole.ts'
import { rescuePlaces } from './rescue.ts'
import { saidBy } from './said-by.ts'
import { segmentsFrom } from './segments.ts'
import { segmentsBack } from './segments-back.ts'

/** What was kept of a job when others changed its folder while it was open, and the folder itself does not hold. */
export interface Rescue extends WholeHistory {
  path: string
  /** Of its folder. */
  name: string
}

/** A folder that may hold what was rescued; near: it lies in the job's own folder or beside it. */
interface Candidate {
  path: string
  near: boolean
}

/** The folders that may hold what was rescued of a job. */
async function candidates(folder: string): Promise<Candidate[]> {
  // A job that lies where the machine keeps what is temporary has it beside itself.
  const places = new Map(rescuePlaces(folder).map(({ within, begins }) => [within, begins]))
  const found: Candidate[] = []
  for (const [place, begins] of places) {
    const entries = await readdir(place, { withFileTypes: true }).catch(() => [])
    const names = entries.filter((entry) => entry.isDirectory() && entry.name.startsWith(begins))
    const near = place !== tmpdir() || place === dirname(folder)
    found.push(...names.map(({ name }) => ({ path: join(place, name), near })))
  }
  return found
}

/** The ids under which a folder's own files have the job, and the hashes of all lines of its history. */
async function ownOf(folder: string): Promise<{ ids: Set<string>; hashes: Set<string> }> {
  const ids = new Set<string>()
  const hashes = new Set<string>()
  const document = await orProblem(readDocument(jobFile(folder)))
  if ('job' in document && document.job.id !== undefined) ids.add(document.job.id)
  const handle = await openForReading(historyFile(folder)).catch(() => undefined)
  if (handle === undefined) return { ids, hashes }
  try {
    for await (const segments of segmentsFrom(handle, 0)) {
      for (const { bytes } of segments) {
        // Only to be compared with, so that no line need be made sure of.
        const hash = hashAtEnd(bytes)
        if (hash !== undefined) hashes.add(hash)
        const read = mayBegin(bytes) ? readLine(bytes) : undefined
        if (read !== undefined && isBegin(read.line)) ids.add(read.line.job)
      }
    }
  } finally {
    await handle.close()
  }
  return { ids, hashes }
}

/** What tells quickly what was rescued: the job that it is of, and its last line. */
async function lookAtRescue(path: string): Promise<{ of: string; hash: string | undefined } | undefined> {
  const handle = await openForReading(historyFile(path)).catch(() => undefined)
  if (handle === undefined) return undefined
  try {
    const first = await lineAt(handle, 0)
    if (first === undefined || !isBegin(first.line)) return undefined
    const of = first.line.job
    const { size } = await handle.stat()
    for await (const segments of segmentsBack(handle, size))
      for (const { bytes, ended } of segments) if (ended) return { of, hash: hashAtEnd(bytes) }
    return undefined
  } finally {
    await handle.close()
  }
}

/** What was rescued of a job. */
export interface AllRescues {
  /** What its folder does not hold, what holds most first. */
  rescues: Rescue[]
  /** Of what its folder holds as well. */
  held: Pick<Rescue, 'path' | 'name'>[]
}

/** As `allRescuesOf`, only what the folder does not hold. */
export const rescuesOf = async (folder: string, now: Job | undefined): Promise<Rescue[]> =>
  (await allRescuesOf(folder, now)).rescues

/**
 * What was rescued of a job. Changes nothing.
 * @param now the job as its folder holds it; undefined where that can't be told
 * @param sound hashes of the lines of its history that are known to hang together; undefined: every line is believed,
 * which is quick
 */
export async function allRescuesOf(
  folder: string,
  now: Job | undefined,
  sound?: ReadonlySet<string>,
): Promise<AllRescues> {
  const found = await candidates(folder)
  if (found.length === 0) return { rescues: [], held: [] }
  const { ids, hashes: there } = await ownOf(folder)
  const hashes = sound ?? there
  const rescues: Rescue[] = []
  const held: AllRescues['held'] = []
  for (const { path, near } of found) {
    const look = await lookAtRescue(path).catch(() => undefined)
    if (look === undefined) continue
    // Where neither file says which job it is, the name of the folder must do; far from it there are others of that name.
    if (!ids.has(look.of) && (ids.size > 0 || !near)) continue
    const named = { path, name: basename(path) }
    if (look.hash !== undefined && hashes.has(look.hash)) {
      held.push(named)
      continue
    }
    const whole = await orProblem(readWhole(path))
    if ('problem' in whole) continue
    const same = now !== undefined && isDeepStrictEqual(saidBy(whole.job), saidBy(now))
    if (same || hashes.has(whole.tip.hash)) held.push(named)
    else rescues.push({ ...whole, ...named })
  }
  rescues.sort((a, b) => b.tip.n - a.tip.n || a.name.localeCompare(b.name))
  return { rescues, held }
}
