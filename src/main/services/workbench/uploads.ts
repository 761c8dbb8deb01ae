import { randomBytes } from 'node:crypto'
import { mkdir, open, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileNameOf } from '../files/safe-name.ts'
import { systemCause, systemCode } from '../files/system-reason.ts'
import type { GivenScan, WantedPage } from '../scans/file/given-scan.ts'
import { ServiceError } from '../service-error.ts'
import { reason } from '../words/services-words.ts'

/** Scans that may wait to be made sheets of. */
const MOST_WAITING = 100

interface Upload extends GivenScan {
  /** Whether it was looked into, so that whoever did gives it back. */
  looked: boolean
}

/** Scans that a person handed over and that no job has yet. */
export class Uploads {
  readonly #folder: () => Promise<string>
  readonly #largest: () => number
  readonly #waiting = new Map<string, Upload>()
  #arriving = 0

  /**
   * @param folder where the bytes lie until a job has them
   * @param largest bytes of a scan
   */
  constructor(folder: () => Promise<string>, largest: () => number) {
    this.#folder = folder
    this.#largest = largest
  }

  /**
   * Takes the bytes of a scan into a file of its own.
   * @param name what the person's system calls it; only its last part counts
   * @returns the id by which it is asked for
   * @throws ServiceError with a sentence; nothing of the scan is kept then
   */
  async receive(name: string, bytes: AsyncIterable<Uint8Array>): Promise<string> {
    const called = fileNameOf(name, 'scan')
    if (this.#waiting.size + this.#arriving >= MOST_WAITING) {
      throw new ServiceError(reason('upload.too-many', { most: MOST_WAITING, called }))
    }
    this.#arriving += 1
    const id = randomBytes(16).toString('hex')
    let path: string | undefined
    try {
      path = join(await this.#folder(), id, called)
      await mkdir(dirname(path))
      await this.#write(path, called, bytes)
      this.#waiting.set(id, { path, called, looked: false })
      return id
    } catch (error) {
      if (path !== undefined) await rm(dirname(path), { recursive: true, force: true }).catch(() => undefined)
      throw error instanceof ServiceError ? error : notKept(called, error)
    } finally {
      this.#arriving -= 1
    }
  }

  /**
   * The scan that was handed over under this id.
   * @throws ServiceError when there is none (any more)
   */
  find(id: string): GivenScan {
    const scan = this.#waiting.get(id)
    if (scan !== undefined) return scan
    throw new ServiceError(reason('upload.gone'))
  }

  has(id: string): boolean {
    return this.#waiting.has(id)
  }

  /**
   * The scan of this id, with the pages that are wanted of it.
   * @throws ServiceError as `find`
   */
  wanted(id: string, pages: readonly WantedPage[] | undefined, password: string | undefined): GivenScan {
    const { path, called, password: known } = this.find(id)
    return { path, called, pages, password: password ?? known }
  }

  /** It was looked into, and opened by this password. */
  looked(id: string, password: string | undefined): void {
    const scan = this.#waiting.get(id)
    if (scan !== undefined)
      this.#waiting.set(id, { ...scan, looked: true, password: password ?? scan.password })
  }

  /** Removes a scan that could not be brought in, unless somebody looked into it and may want it otherwise. */
  async refused(id: string): Promise<void> {
    if (this.#waiting.get(id)?.looked !== true) await this.remove(id)
  }

  /** Removes a scan that is in a job now, or that nobody wants. */
  async remove(id: string): Promise<void> {
    const scan = this.#waiting.get(id)
    this.#waiting.delete(id)
    if (scan !== undefined)
      await rm(dirname(scan.path), { recursive: true, force: true }).catch(() => undefined)
  }

  async #write(path: string, called: string, bytes: AsyncIterable<Uint8Array>): Promise<void> {
    const file = await open(path, 'wx', 0o600)
    let size = 0
    try {
      for await (const chunk of bytes) {
        size += chunk.length
        if (size > this.#largest()) {
          throw new ServiceError(reason('upload.too-large', { called, largest: this.#largest() }))
        }
        for (let done = 0; done < chunk.length; ) done += (await file.write(chunk, done)).bytesWritten
      }
    } finally {
      await file.close()
    }
    if (size === 0) throw new ServiceError(reason('upload.empty', { called }))
  }
}

/** Errors of the disk have a code that tells of it; anything else came from whoever sent the bytes. */
function notKept(called: string, error: unknown): ServiceError {
  const code = systemCode(error)
  const disk = code !== undefined && /^E[A-Z0-9]+$/.test(code) && !SENDER_GONE.has(code)
  return new ServiceError(
    disk
      ? reason('upload.not-kept', { called, cause: systemCause(error) })
      : reason('upload.not-whole', { called }),
  )
}

const SENDER_GONE = new Set([
  'ECONNRESET',
  'ECONNABORTED',
  'EPIPE',
  'ERR_STREAM_PREMATURE_CLOSE',
  'ETIMEDOUT',
])
