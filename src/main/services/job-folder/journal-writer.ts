import { open } from 'node:fs/promises'
import { dirname } from 'node:path'
import { syncFolder } from '../files/sync-folder.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

/** What the journal needs of an open file; a test gives one whose disk is full. */
export interface JournalHandle {
  write(
    bytes: Uint8Array,
    offset: number,
    length: number,
    position: number,
  ): Promise<{ bytesWritten: number }>
  sync(): Promise<void>
  truncate(length: number): Promise<void>
  stat(): Promise<{ size: number }>
  close(): Promise<void>
}

export type OpenJournal = (path: string) => Promise<JournalHandle>

/** Opens the journal for reading and writing; one that is made here has a durable name. */
export const openJournalFile: OpenJournal = async (path) => {
  try {
    return await open(path, 'r+')
  } catch (error) {
    if (systemCode(error) !== 'ENOENT') throw error
  }
  const made = await open(path, 'wx+')
  await syncFolder(dirname(path))
  return made
}

/** The folder can no longer be written safely; whoever gets this must go read-only. */
export class JournalBroken extends ServiceError {
  override name = 'JournalBroken'
}

/** Appends to journal.ndjson so that a line is either whole and on disk, or not there. */
export class JournalWriter {
  readonly #path: string
  readonly #openJournal: OpenJournal
  /** Opened by the first line, so that a session without edits leaves no trace. */
  #handle: JournalHandle | undefined
  /** Bytes known to be whole lines. */
  #sound: number
  /** Bytes the file has; more than #sound while a torn tail waits to be cut. */
  #size: number

  /** soundBytes: where the replay found the last whole line to end; size: what it read altogether. */
  constructor(path: string, soundBytes: number, size: number, openJournal: OpenJournal = openJournalFile) {
    this.#path = path
    this.#openJournal = openJournal
    this.#sound = soundBytes
    this.#size = size
  }

  get isEmpty(): boolean {
    return this.#size === 0
  }

  /**
   * Appends whole lines and returns when they are on disk.
   * @throws ServiceError when they could not be written; the journal is then as it was before.
   * @throws JournalBroken when it could not even be put back.
   */
  async append(text: string): Promise<void> {
    const bytes = Buffer.from(text, 'utf8')
    let handle: JournalHandle
    try {
      handle = await this.#opened()
    } catch (error) {
      throw error instanceof ServiceError ? error : this.#notMade(error)
    }
    try {
      if (this.#size > this.#sound) await this.#cutTo(handle, this.#sound)
      for (let done = 0; done < bytes.length; ) {
        const position = this.#sound + done
        const { bytesWritten } = await handle.write(bytes, done, bytes.length - done, position)
        if (bytesWritten === 0) throw new Error('nothing more can be written')
        done += bytesWritten
      }
      await handle.sync()
    } catch (error) {
      await this.#takeBack(handle, error)
    }
    this.#sound += bytes.length
    this.#size = this.#sound
  }

  /** Empties the journal, once job.json holds all of it. */
  async clear(): Promise<void> {
    if (this.#size > 0) await this.#cutTo(await this.#opened(), 0)
  }

  async close(): Promise<void> {
    await this.#handle?.close()
    this.#handle = undefined
  }

  /** The open file, seen to be as this session left it. */
  async #opened(): Promise<JournalHandle> {
    this.#handle ??= await this.#openJournal(this.#path)
    const { size } = await this.#handle.stat()
    if (size === this.#size) return this.#handle
    throw new JournalBroken(reason('journal.changed-by-another', { path: this.#path }))
  }

  async #cutTo(handle: JournalHandle, length: number): Promise<void> {
    await handle.truncate(length)
    this.#size = length
    this.#sound = Math.min(this.#sound, length)
    await handle.sync()
  }

  async #takeBack(handle: JournalHandle, cause: unknown): Promise<never> {
    try {
      await this.#cutTo(handle, this.#sound)
    } catch (error) {
      const why = { path: this.#path, cause: systemCause(cause), afterwards: systemCause(error) }
      throw new JournalBroken(reason('journal.not-taken-back', why))
    }
    throw this.#notMade(cause)
  }

  #notMade(cause: unknown): ServiceError {
    return new ServiceError(reason('journal.not-written', { path: this.#path, cause: systemCause(cause) }))
  }
}
