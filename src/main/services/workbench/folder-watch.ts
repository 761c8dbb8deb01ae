import { fileStamp } from '../job-folder/history/job-file.ts'
import { linesBack } from '../job-folder/history/lines-back.ts'
import { hereIn } from '../job-folder/lock/here.ts'
import { lookAtLock } from '../job-folder/lock/look-at-lock.ts'
import { isGone } from '../job-folder/lock/why-gone.ts'
import { historyFile, jobFile, lockFile } from '../job-layout/job-layout.ts'

/** Milliseconds between two looks. */
export const MEANWHILE = 2000

/** What became of a job's folder since the job was read from it. */
export interface Meanwhile {
  /** Its history has other edits by now. */
  wentOn: boolean
  /** Nobody has it any more. */
  free: boolean
}

/** Whether nobody holds a job folder; where that can't be seen, somebody may. */
async function isFree(folder: string): Promise<boolean> {
  try {
    const found = await lookAtLock(lockFile(folder))
    return found.kind === 'absent' || isGone(found, await hereIn(folder))
  } catch {
    return false
  }
}

/** Number of the last edit of a history; undefined where it has none, or none that can be read. */
async function lastNumber(folder: string): Promise<number | undefined> {
  try {
    for await (const { n } of linesBack(historyFile(folder))) return n
  } catch {
    // Whoever reads the job anew is told what is wrong.
  }
  return undefined
}

/**
 * Looks now and then at a folder whose job somebody else has, and which is only looked at here. Each look reads a lock
 * and, where the history was written to, its end.
 */
export class FolderWatch {
  readonly #folder: string
  /** Number of the last edit that was read here. */
  readonly #n: number
  readonly #turned: () => void
  readonly #timer: NodeJS.Timeout
  #stamp = ''
  #now: Meanwhile = { wentOn: false, free: false }
  #ended = false

  /** @param turned called when something became of it */
  constructor(folder: string, n: number, turned: () => void, every = MEANWHILE) {
    this.#folder = folder
    this.#n = n
    this.#turned = turned
    this.#timer = setInterval(() => void this.look(), every)
    this.#timer.unref()
  }

  /** As it was at the last look. */
  get now(): Meanwhile {
    return this.#now
  }

  async look(): Promise<void> {
    const [free, wentOn] = await Promise.all([isFree(this.#folder), this.#hasGoneOn()])
    const before = this.#now
    if (this.#ended || (before.free === free && before.wentOn === wentOn)) return
    this.#now = { free, wentOn }
    this.#turned()
  }

  end(): void {
    this.#ended = true
    clearInterval(this.#timer)
  }

  async #hasGoneOn(): Promise<boolean> {
    const paths = [historyFile(this.#folder), jobFile(this.#folder)]
    const stamps = await Promise.all(paths.map((path) => fileStamp(path).catch(() => '')))
    const stamp = stamps.join(' ')
    if (stamp === this.#stamp) return this.#now.wentOn
    const n = await lastNumber(this.#folder)
    this.#stamp = stamp
    return n !== undefined && n !== this.#n
  }
}
