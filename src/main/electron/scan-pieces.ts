import { z } from 'zod'
import { SCAN_PIECE_BYTES } from '../../contract/scan-upload.ts'
import { ServiceError } from '../services/service-error.ts'
import { reason } from '../services/words/services-words.ts'
import { ByteQueue } from './byte-queue.ts'

/** What the address of a piece says. */
const ADDRESS = z
  .strictObject({
    name: z.string().min(1).max(1000),
    upload: z.uuid(),
    piece: z.coerce.number().int().min(0),
    of: z.coerce.number().int().min(1).max(4096),
  })
  .refine(({ piece, of }) => piece < of)

interface Arriving {
  of: number
  next: number
  /** Whether a piece is just being taken in. */
  taking: boolean
  queue: ByteQueue
  /** The scan's id, once all bytes are taken in. */
  id: Promise<string>
}

/** More at once than this nobody drops on a window. */
const ARRIVING_AT_ONCE = 8

/** Puts scans together that arrive in pieces, never holding more than one piece of each. */
export class ScanPieces {
  readonly #receive: (name: string, bytes: AsyncIterable<Uint8Array>) => Promise<string>
  readonly #arriving = new Map<string, Arriving>()

  /** @param receive takes the bytes of a whole scan in and gives its id */
  constructor(receive: (name: string, bytes: AsyncIterable<Uint8Array>) => Promise<string>) {
    this.#receive = receive
  }

  /**
   * Takes one piece.
   * @returns the scan's id with the last piece, null before
   * @throws ServiceError with a sentence when the scan is refused; what arrived of it is dropped
   */
  async take(query: URLSearchParams, bytes: Uint8Array): Promise<string | null> {
    const read = ADDRESS.safeParse(Object.fromEntries(query))
    if (!read.success || bytes.length > SCAN_PIECE_BYTES) {
      throw new ServiceError(reason('pieces.not-understood'))
    }
    const { name, upload, piece, of } = read.data
    const arriving = piece === 0 ? this.#begin(name, upload, of) : this.#arriving.get(upload)
    if (arriving === undefined || arriving.of !== of || arriving.next !== piece || arriving.taking) {
      this.abandon(upload)
      throw new ServiceError(reason('pieces.lost'))
    }
    try {
      arriving.taking = true
      // Whichever is first: the piece is taken in, or the scan is refused.
      await Promise.race([arriving.queue.put(bytes), arriving.id])
      arriving.taking = false
      arriving.next++
      if (arriving.next < of) return null
      arriving.queue.end()
      const id = await arriving.id
      this.#arriving.delete(upload)
      return id
    } catch (error) {
      this.abandon(upload)
      throw error
    }
  }

  /** Drops what arrived of a scan. */
  abandon(upload: string): void {
    this.#arriving.get(upload)?.queue.fail(new ServiceError(reason('pieces.broken-off')))
    this.#arriving.delete(upload)
  }

  /** Drops all that is not here whole: the page that sent it is gone. */
  abandonAll(): void {
    for (const upload of [...this.#arriving.keys()]) this.abandon(upload)
  }

  #begin(name: string, upload: string, of: number): Arriving {
    if (this.#arriving.size >= ARRIVING_AT_ONCE) {
      throw new ServiceError(reason('pieces.too-many', { most: ARRIVING_AT_ONCE }))
    }
    this.abandon(upload)
    const queue = new ByteQueue()
    const id = this.#receive(name, queue)
    // Refused while no piece waits: the next one is told.
    id.catch(() => undefined)
    const arriving: Arriving = { of, next: 0, taking: false, queue, id }
    this.#arriving.set(upload, arriving)
    return arriving
  }
}
