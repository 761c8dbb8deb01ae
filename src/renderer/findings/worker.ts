import { applyEdit } from '../../core/job/edits/edit.ts'
import { dimensionTable } from '../../core/ledger/table/dimension-table.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import type { FromWorker, ToWorker } from './messages.ts'

const answer = (message: FromWorker): void => self.postMessage(message)

const inWords = (error: unknown): string =>
  error instanceof ScantlingError
    ? error.message
    : `The table could not be worked out because of a fault in the program (${String(error)}). The job is as it was; please report this.`

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'table') {
    try {
      answer({ kind: 'table', n: data.n, table: dimensionTable(data.job, { unit: data.unit }) })
    } catch (error) {
      answer({ kind: 'failed', n: data.n, sentence: inWords(error) })
    }
    return
  }
  try {
    const { job } = applyEdit(data.job, data.edit)
    const row =
      dimensionTable(job, { unit: data.unit }).rows.find(({ name }) => name === data.dimension) ?? null
    answer({ kind: 'trial', ask: data.ask, row, sentence: '' })
  } catch (error) {
    answer({ kind: 'trial', ask: data.ask, row: null, sentence: inWords(error) })
  }
})
