import { stat } from 'node:fs/promises'
import type { Job } from '../../../../core/job/model/types.ts'
import { systemCause, systemCode } from '../../files/system-reason.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { findLine, lineAt } from './find-line.ts'
import { type HeldHistory, HeldLines } from './held-history.ts'
import type { FileMarks, HistoryHandle, OpenHistory } from './history-handle.ts'
import type { KeptHistory } from './kept-history.ts'
import { isBegin, type LineRef, type Tip } from './kept-line.ts'
import { KnownLines } from './known-lines.ts'
import { type Step, stepOf } from './undo-stacks.ts'

/** The folder can no longer be written safely; whoever gets this must go read-only. */
export class FolderBroken extends ServiceError {
  override name = 'FolderBroken'
}

/** A file of the job is no longer the one that this session reads and writes. */
export class ChangedByAnother extends Error {
  override name = 'ChangedByAnother'
  readonly file: 'history' | 'job'
  constructor(file: 'history' | 'job') {
    super(`The ${file} was changed by another.`)
    this.file = file
  }
}

export interface HistoryStart {
  path: string
  open: OpenHistory
  /** The file, where it is open already. */
  handle?: HistoryHandle
  /** The last whole line. */
  tip: Tip
  /** Bytes that the file has: more than the whole lines where a torn one follows. */
  size: number
  /** Keeps what is torn before it is cut off. */
  setAside: (bytes: Buffer) => Promise<void>
  /** Lines of it that were written by whoever gives it. */
  written?: string
}

const sameFile = (a: FileMarks, b: FileMarks): boolean =>
  a.dev === b.dev && a.ino === b.ino && a.size === b.size

/** Appends to history.ndjson so that a line is either whole and on disk, or not there. */
export class HistoryFile implements KeptHistory {
  readonly path: string
  readonly #open: OpenHistory
  readonly #setAside: HistoryStart['setAside']
  readonly #known = new KnownLines()
  #handle: HistoryHandle | undefined
  #tip: Tip
  #size: number
  /** The file as this session left it; undefined before its first look. */
  #marks: FileMarks | undefined

  constructor({ path, open, handle, tip, size, setAside, written }: HistoryStart) {
    this.path = path
    this.#open = open
    this.#handle = handle
    this.#tip = tip
    this.#size = size
    this.#setAside = setAside
    if (written !== undefined) this.#known.add(written)
  }

  /** The last line on disk. */
  get tip(): Tip {
    return this.#tip
  }

  async ready(): Promise<void> {}

  /**
   * Sees that the name still stands for the file that this session reads and writes, as it left it.
   * @throws ChangedByAnother
   */
  async mustBeOurs(): Promise<void> {
    let there: FileMarks
    let ours: FileMarks
    try {
      const handle = await this.#opened()
      there = await stat(this.path, { bigint: true })
      ours = await handle.stat({ bigint: true })
    } catch (error) {
      if (systemCode(error) === 'ENOENT') throw new ChangedByAnother('history')
      throw error
    }
    if (!sameFile(there, ours) || ours.size !== BigInt(this.#size)) throw new ChangedByAnother('history')
    if (ours.mtimeNs === this.#marks?.mtimeNs) return
    // Touched, or looked at for the first time: the last line must be the one that was read or written.
    if (!(await this.#holdsTip())) throw new ChangedByAnother('history')
    this.#marks = ours
  }

  /**
   * Appends whole lines and returns when they are on disk, in the file that the name stands for.
   * @throws ServiceError when they could not be written; the history is then as it was before.
   * @throws FolderBroken when it could not even be put back; ChangedByAnother when it is not this session's any more.
   */
  async append(text: string, tip: Tip): Promise<void> {
    const bytes = Buffer.from(text, 'utf8')
    const handle = await this.#openedToWrite()
    try {
      if (this.#size > this.#tip.end) await this.#cutTorn()
      for (let done = 0; done < bytes.length; ) {
        const position = this.#tip.end + done
        const { bytesWritten } = await handle.write(bytes, done, bytes.length - done, position)
        if (bytesWritten === 0) throw new Error('nothing more can be written')
        done += bytesWritten
      }
      await handle.sync()
    } catch (error) {
      await this.#takeBack(error)
    }
    this.#size = this.#tip.end + bytes.length
    this.#marks = await handle.stat({ bigint: true })
    await this.mustBeOurs()
    this.#tip = tip
    this.#known.add(text)
  }

  /** What can be undone or made again by a line; null where it can't be read any more. */
  async stepAt(ref: LineRef, job: Job): Promise<Step | null> {
    const [n, at] = ref
    const handle = await this.#opened()
    const there = await lineAt(handle, at)
    // Whoever changed the ends of all lines has moved them.
    const found = there?.line.n === n ? there : await findLine(handle, (line) => line.n === n)
    return found === undefined || isBegin(found.line) ? null : stepOf(found.line, ref, job)
  }

  async held({ hash }: Tip): Promise<HeldHistory> {
    const lines = new HeldLines()
    try {
      await lines.takeFile(await this.#opened())
    } catch {
      // What this session wrote itself is still known.
    }
    lines.takeText(this.#known.text)
    return lines.upTo(hash)
  }

  /** Gives the file back until it is wanted again: what nobody writes to is not held open. */
  async rest(): Promise<void> {
    const handle = this.#handle
    this.#handle = undefined
    await handle?.close()
  }

  close(): Promise<void> {
    return this.rest()
  }

  async #opened(): Promise<HistoryHandle> {
    this.#handle ??= await this.#open(this.path)
    return this.#handle
  }

  async #openedToWrite(): Promise<HistoryHandle> {
    try {
      return await this.#opened()
    } catch (error) {
      if (error instanceof ServiceError) throw error
      throw new ServiceError(reason('history.not-written', { path: this.path, cause: systemCause(error) }))
    }
  }

  async #holdsTip(): Promise<boolean> {
    const found = await lineAt(await this.#opened(), this.#tip.at)
    return found?.tip.hash === this.#tip.hash
  }

  async #read(from: number, to: number): Promise<Buffer> {
    const handle = await this.#opened()
    const bytes = Buffer.alloc(to - from)
    for (let done = 0; done < bytes.length; ) {
      const { bytesRead } = await handle.read(bytes, done, bytes.length - done, from + done)
      if (bytesRead === 0) break
      done += bytesRead
    }
    return bytes
  }

  async #cutTorn(): Promise<void> {
    await this.#setAside(await this.#read(this.#tip.end, this.#size))
    await this.#cutTo(this.#tip.end)
  }

  async #cutTo(length: number): Promise<void> {
    const handle = await this.#opened()
    await handle.truncate(length)
    this.#size = length
    await handle.sync()
  }

  async #takeBack(cause: unknown): Promise<never> {
    try {
      await this.#cutTo(this.#tip.end)
    } catch (error) {
      const why = { path: this.path, cause: systemCause(cause), afterwards: systemCause(error) }
      throw new FolderBroken(reason('history.not-taken-back', why))
    }
    // What was cut off changed the time of the file.
    this.#marks = undefined
    throw new ServiceError(reason('history.not-written', { path: this.path, cause: systemCause(cause) }))
  }
}
