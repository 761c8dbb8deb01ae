import { applyEdit } from '../../core/job/edits/edit.ts'
import { dimensionTable } from '../../core/ledger/table/dimension-table.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { reason } from '../words/window-words.ts'
import type { FromWorker, ToWorker } from './messages.ts'

const answer = (message: FromWorker): void => self.postMessage(message)

const whyOf = (error: unknown): AnyReason =>
  error instanceof ScantlingError ? error.reason : reason('findings.fault', { error: String(error) })

self.addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'table') {
    try {
      answer({ kind: 'table', n: data.n, table: dimensionTable(data.job, { unit: data.unit }) })
    } catch (error) {
      answer({ kind: 'failed', n: data.n, because: whyOf(error) })
    }
    return
  }
  try {
    const { job } = applyEdit(data.job, data.edit)
    const row =
      dimensionTable(job, { unit: data.unit }).rows.find(({ name }) => name === data.dimension) ?? null
    answer({ kind: 'trial', ask: data.ask, row, because: null })
  } catch (error) {
    answer({ kind: 'trial', ask: data.ask, row: null, because: whyOf(error) })
  }
})
