import type { z } from 'zod'
import { ProcessPool } from '../../process/process-pool.ts'
import type { QueueOptions } from '../../process/work-queue.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { ScanLocked } from '../file/scan-locked.ts'
import { howItEnded } from './how-it-ended.ts'
import { READ_PROTOCOL, type ReadOrder } from './read-protocol.ts'
import { readerProgram } from './reader-program.ts'
import { timeAllowed } from './time-allowed.ts'

/** Milliseconds that it is kept without work, so that one look after another starts at once. */
const KEPT = 10_000

export interface ReadingOptions extends Pick<QueueOptions, 'newestFirst'> {
  /** Whether what was begun is done to its end though it is given up: what comes of it is kept for the next who asks. */
  finishes?: boolean
  program?: ReturnType<typeof readerProgram>
}

/** A process that reads scans, one task at a time. */
export class ReadingProcess {
  readonly #pool: ProcessPool<ReadOrder, typeof READ_PROTOCOL> | undefined

  constructor({ program = readerProgram(), ...how }: ReadingOptions = {}) {
    if (program !== undefined)
      this.#pool = new ProcessPool<ReadOrder, typeof READ_PROTOCOL>(program, READ_PROTOCOL, {
        ...how,
        kept: KEPT,
      })
  }

  /**
   * Has a task done.
   * @param expects what it is answered with
   * @param signal gives it up, and ends the process when it is at it, unless it finishes what it began
   * @throws ServiceError with a sentence that names the scan; ScanLocked when it wants a password
   */
  async do<A>(order: ReadOrder, expects: z.ZodType<A>, signal?: AbortSignal): Promise<A> {
    if (this.#pool === undefined) throw new ServiceError(reason('reading.no-program', { scan: order.called }))
    const { memory } = order.limits
    const seconds = (): Promise<number> => timeAllowed(order)
    const outcome = await this.#pool.do(order, expects, { memory, seconds, signal })
    if (outcome.end === 'answer') return outcome.answer
    if (outcome.end !== 'refusal') throw howItEnded(outcome, order)
    const { because, locked } = outcome.refusal
    throw locked ? new ScanLocked(because) : new ServiceError(because)
  }

  /** Ends the process, when it has nothing to do. */
  end(): void {
    this.#pool?.end()
  }
}
