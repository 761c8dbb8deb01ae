import type { Edit } from '../../core/job/edits/edit.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import type { Table, TableRow } from '../../core/ledger/table/table.ts'
import type { Look } from '../../core/ledger/units/look.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { reason } from '../words/window-words.ts'
import type { FromWorker, ToWorker } from './messages.ts'
import { Receiver, Sender } from './sent.ts'

export interface Trial {
  row: TableRow | null
  /** That the row is in. */
  unit: Unit
  /** Why there is no row; null when there is one, or when nobody wants it any more. */
  because: AnyReason | null
}

/** With the job whole: what is sent of it depends on what was sent before. */
type Ask<K extends 'table' | 'trial'> = Omit<Extract<ToWorker, { kind: K }>, 'job'> & { job: Job }
type TableAsk = Ask<'table'>
type TrialAsk = Ask<'trial'>

interface WaitingTrial {
  message: TrialAsk
  answer: (trial: Trial) => void
}

const STOPPED = reason('findings.stopped')

/**
 * Computes tables off the main thread, so that the sheet moves while a large job is worked out. One thing at a time:
 * of the tables that wait only the newest is worked out, and of the trials of a dimension too.
 */
export class Computer {
  readonly #worker: Worker
  readonly #jobs = new Sender<Job>()
  readonly #tables = new Receiver<Table>()
  #asked = 0
  #busy = false
  /** Whether the table that is being worked out is of a job that is closed by now. */
  #unwanted = false
  #table: TableAsk | null = null
  readonly #trials = new Map<string, WaitingTrial>()
  /** The trial that is being worked out. */
  #trial: WaitingTrial | null = null

  /**
   * @param found called with the table of the newest job that was worked out, and the number of its last edit
   * @param failed called with the reason when a job could not be worked out
   */
  constructor(found: (n: number, table: Table) => void, failed: (because: AnyReason) => void) {
    this.#worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
    this.#worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      this.#busy = false
      const table = data.kind === 'table' ? this.#tables.receive(data.table) : null
      if (data.kind === 'trial') {
        if (this.#trial !== null) answer(this.#trial, data.row, data.because)
        this.#trial = null
      } else if (!this.#unwanted) {
        if (data.kind === 'failed') failed(data.because)
        else if (table !== null) found(data.n, table)
      }
      this.#unwanted = false
      this.#next()
    })
    this.#worker.addEventListener('error', () => {
      this.#busy = false
      this.#unwanted = false
      this.#jobs.anew()
      this.#giveUpTrials(STOPPED)
      this.#trial = null
      failed(STOPPED)
    })
  }

  /** Asks for the table of a job, as it is looked at. */
  table(n: number, job: Job, look: Partial<Look> = {}): void {
    this.#table = { kind: 'table', n, job, look }
    this.#next()
  }

  /**
   * What a dimension would come to after an edit that is not made. A trial that waits is given up for a newer one of
   * the same dimension.
   */
  trial(job: Job, edit: Edit, dimension: string, look: Partial<Look> = {}): Promise<Trial> {
    const message: TrialAsk = { kind: 'trial', ask: ++this.#asked, job, look, edit, dimension }
    return new Promise((resolve) => {
      const older = this.#trials.get(dimension)
      if (older !== undefined) answer(older, null, null)
      this.#trials.set(dimension, { message, answer: resolve })
      this.#next()
    })
  }

  /** The job is closed: nothing of it is told any more. */
  forget(): void {
    this.#table = null
    this.#jobs.anew()
    this.#worker.postMessage({ kind: 'forget' } satisfies ToWorker)
    this.#unwanted = this.#busy && this.#trial === null
    this.#giveUpTrials(null)
  }

  #giveUpTrials(because: AnyReason | null): void {
    for (const waiting of this.#trials.values()) answer(waiting, null, because)
    this.#trials.clear()
    if (this.#trial !== null) answer(this.#trial, null, because)
  }

  #next(): void {
    if (this.#busy) return
    const [waiting] = this.#trials.values()
    const message = this.#table ?? waiting?.message
    if (message === undefined) return
    if (message.kind === 'table') this.#table = null
    else {
      this.#trials.delete(message.dimension)
      this.#trial = waiting ?? null
    }
    this.#busy = true
    this.#worker.postMessage({ ...message, job: this.#jobs.send(message.job) } satisfies ToWorker)
  }
}

function answer(
  { message: { job, look }, answer }: WaitingTrial,
  row: TableRow | null,
  because: AnyReason | null,
): void {
  answer({ row, unit: look.unit ?? job.unit, because })
}
