import { historyFile } from '../../job-layout/job-layout.ts'
import { ServiceError } from '../../service-error.ts'
import { reason, type ServiceReason } from '../../words/services-words.ts'
import { openForReading } from './history-handle.ts'
import { isBegin, type Tip } from './kept-line.ts'
import { readTail } from './read-tail.ts'
import { Replay, type Replayed } from './replay-lines.ts'

/** All that a history holds. */
export interface WholeHistory extends Replayed {
  tip: Tip
  /** Id of the job that it is of. */
  of: string
  /** Who made the last edit, the id of a person of the job or a name, and when; undefined where it begins with the job and says no more. */
  last: { by: string; at: string } | undefined
  /** Hashes of its lines. */
  hashes: ReadonlySet<string>
  /** Who made each of its edits, as `last.by`. */
  makers: { n: number; by: string }[]
  /** The first edit that it tells, where those before were gone when it was rescued; null: none is gone. */
  begins: number | null
  /** The whole lines, as they are in the file. */
  bytes: Buffer
}

/**
 * All that the history in a folder holds, from its top up to the last line that goes on from the one before it.
 * @throws ServiceError when there is none, or it can't be read
 */
export async function readWhole(folder: string): Promise<WholeHistory> {
  const path = historyFile(folder)
  const handle = await openForReading(path).catch((error: unknown) => {
    if (error instanceof ServiceError) throw error
    throw new ServiceError(reason('history.none', { path }))
  })
  try {
    const replay = new Replay({ path, folder })
    let of = ''
    let last: WholeHistory['last']
    let begins: number | null = null
    const hashes = new Set<string>()
    const makers: WholeHistory['makers'] = []
    const { tip } = await readTail(handle, null, (placed) => {
      const { line, tip } = placed
      hashes.add(tip.hash)
      if (isBegin(line)) {
        of = line.job
        // Nobody is named only where a rescue began with the job as it was.
        if (line.previous === null && line.by === '' && line.n > 0) begins = line.n + 1
      } else {
        makers.push({ n: line.n, by: line.by })
      }
      last = line.by === '' ? undefined : { by: line.by, at: line.at }
      replay.take(placed)
    })
    const now = replay.done()
    const bytes = Buffer.alloc(tip.end)
    await handle.read(bytes, 0, tip.end, 0)
    return { ...now, tip, of, last, hashes, makers, begins, bytes }
  } finally {
    await handle.close()
  }
}

/** A service's answer, or the reason that it refused. */
export async function orProblem<T extends object>(work: Promise<T>): Promise<T | { problem: ServiceReason }> {
  try {
    return await work
  } catch (error) {
    if (error instanceof ServiceError) return { problem: error.reason as ServiceReason }
    throw error
  }
}
