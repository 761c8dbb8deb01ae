import { applyEdit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import { dimensionTable } from '../../core/ledger/table/dimension-table.ts'
import type { Table } from '../../core/ledger/table/table.ts'
import type { Look } from '../../core/ledger/units/look.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { reason } from '../words/window-words.ts'
import type { FromWorker, ToWorker } from './messages.ts'
import { Receiver, Sender } from './sent.ts'

const whyOf = (error: unknown): AnyReason =>
  error instanceof ScantlingError ? error.reason : reason('findings.fault', { error: String(error) })

/** Works out what it is asked for, each table from the one before. */
export class TableWorker {
  readonly #jobs = new Receiver<Job>()
  readonly #tables = new Sender<Table>()
  /** The last that was worked out. */
  #table: Table | undefined

  answer(asked: Exclude<ToWorker, { kind: 'forget' }>): FromWorker {
    if ('whole' in asked.job) this.forget()
    const job = this.#jobs.receive(asked.job)
    return asked.kind === 'table' ? this.#tableOf(job, asked) : this.#trial(job, asked)
  }

  /** Another job is begun, or none: nothing of the last one is held any more. */
  forget(): void {
    this.#jobs.forget()
    this.#tables.anew()
    this.#table = undefined
  }

  #tableOf(job: Job, { n, look }: { n: number; look: Partial<Look> }): FromWorker {
    try {
      this.#table = dimensionTable(job, this.#with(look))
      return { kind: 'table', n, table: this.#tables.send(this.#table) }
    } catch (error) {
      return { kind: 'failed', n, because: whyOf(error) }
    }
  }

  #trial(job: Job, { ask, edit, dimension, look }: Extract<ToWorker, { kind: 'trial' }>): FromWorker {
    try {
      const { rows } = dimensionTable(applyEdit(job, edit).job, this.#with(look))
      const row = rows.find(({ name }) => name === dimension) ?? null
      return { kind: 'trial', ask, row, because: null }
    } catch (error) {
      return { kind: 'trial', ask, row: null, because: whyOf(error) }
    }
  }

  #with(look: Partial<Look>): Partial<Look> & { before?: Table } {
    return { ...look, ...(this.#table === undefined ? {} : { before: this.#table }) }
  }
}
