import { randomBytes } from 'node:crypto'
import { mkdir, open, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileNameOf } from '../files/safe-name.ts'
import { systemCode, systemReason } from '../files/system-reason.ts'
import type { GivenScan } from '../scans/add-scan.ts'
import { ServiceError } from '../service-error.ts'

/** The largest scan that is taken in, in bytes. */
export const SCAN_BYTES = 2 * 1024 ** 3

/** Scans that may wait to be made sheets of. */
const MOST_WAITING = 100

/** Scans that a person handed over and that no job has yet. */
export class Uploads {
  readonly #folder: () => Promise<string>
  readonly #largest: number
  readonly #waiting = new Map<string, GivenScan>()
  #arriving = 0

  /** @param folder where the bytes lie until a job has them */
  constructor(folder: () => Promise<string>, largest: number = SCAN_BYTES) {
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
      throw new ServiceError(
        `${MOST_WAITING} scans wait to be brought in already: make a job of them before you hand over "${called}".`,
      )
    }
    this.#arriving += 1
    const id = randomBytes(16).toString('hex')
    let path: string | undefined
    try {
      path = join(await this.#folder(), id, called)
      await mkdir(dirname(path))
      await this.#write(path, called, bytes)
      this.#waiting.set(id, { path, called })
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
    throw new ServiceError('That scan is not here any more: hand it over again.')
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
        if (size > this.#largest) {
          throw new ServiceError(
            `The scan "${called}" is larger than ${inWords(this.#largest)}, the most that is taken in: ` +
              'save it with compression, or in parts.',
          )
        }
        for (let done = 0; done < chunk.length; ) done += (await file.write(chunk, done)).bytesWritten
      }
    } finally {
      await file.close()
    }
    if (size === 0) throw new ServiceError(`The scan "${called}" is empty: scan or copy it again.`)
  }
}

const inWords = (bytes: number): string =>
  bytes >= 1024 ** 3 ? `${bytes / 1024 ** 3} GiB` : `${bytes.toLocaleString('en')} bytes`

/** Errors of the disk have a code that tells of it; anything else came from whoever sent the bytes. */
function notKept(called: string, error: unknown): ServiceError {
  const code = systemCode(error)
  const disk = code !== undefined && /^E[A-Z0-9]+$/.test(code) && !SENDER_GONE.has(code)
  return new ServiceError(
    disk
      ? `The scan "${called}" could not be kept because ${systemReason(error)}: make room and hand it over again.`
      : `The scan "${called}" did not arrive whole: hand it over again.`,
  )
}

const SENDER_GONE = new Set([
  'ECONNRESET',
  'ECONNABORTED',
  'EPIPE',
  'ERR_STREAM_PREMATURE_CLOSE',
  'ETIMEDOUT',
])
