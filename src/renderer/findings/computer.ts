import type { Edit } from '../../core/job/edit-types.ts'
import type { Job, Unit } from '../../core/job/types.ts'
import type { Table, TableRow } from '../../core/ledger/table.ts'
import type { FromWorker, ToWorker } from './messages.ts'

export interface Trial {
  row: TableRow | null
  /** Why there is no row; empty when there is one. */
  sentence: string
}

/** Computes tables off the main thread, so that the sheet moves while a large job is worked out. */
export class Computer {
  readonly #worker: Worker
  readonly #trials = new Map<number, (trial: Trial) => void>()
  #asked = 0
  #busy = false
  #waiting: { n: number; job: Job; unit: Unit } | null = null

  /**
   * @param found called with the table of the newest job that was worked out, and the number of its last edit
   * @param failed called with a sentence when a job could not be worked out
   */
  constructor(found: (n: number, table: Table) => void, failed: (sentence: string) => void) {
    this.#worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
    this.#worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
      if (data.kind === 'trial') {
        this.#trials.get(data.ask)?.({ row: data.row, sentence: data.sentence })
        this.#trials.delete(data.ask)
        return
      }
      this.#busy = false
      if (data.kind === 'table') found(data.n, data.table)
      else failed(data.sentence)
      this.#next()
    })
    this.#worker.addEventListener('error', () => {
      this.#busy = false
      failed(
        'The part of the program that works out the table has stopped: reload the window. The job is safe.',
      )
    })
  }

  /** Asks for the table of a job, looked at in a unit; of jobs that wait, only the newest is worked out. */
  table(n: number, job: Job, unit: Unit = job.unit): void {
    this.#waiting = { n, job, unit }
    this.#next()
  }

  /** What a dimension would come to after an edit that is not made. */
  trial(job: Job, edit: Edit, dimension: string, unit: Unit = job.unit): Promise<Trial> {
    const ask = ++this.#asked
    return new Promise((resolve) => {
      this.#trials.set(ask, resolve)
      this.#send({ kind: 'trial', ask, job, unit, edit, dimension })
    })
  }

  #next(): void {
    if (this.#busy || this.#waiting === null) return
    const { n, job, unit } = this.#waiting
    this.#waiting = null
    this.#busy = true
    this.#send({ kind: 'table', n, job, unit })
  }

  #send(message: ToWorker): void {
    this.#worker.postMessage(message)
  }
}
