import type { Edit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import type { Table, TableRow } from '../../core/ledger/table/table.ts'
import type { Look } from '../../core/ledger/units/look.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import type { Sent } from './sent.ts'

/** What the window asks of the worker that computes. */
export type ToWorker =
  /** The table of the job as it is after edit `n`, as it is looked at. */
  | { kind: 'table'; n: number; job: Sent<Job>; look: Partial<Look> }
  /** One row as it would be after an edit that is not made yet. */
  | { kind: 'trial'; ask: number; job: Sent<Job>; look: Partial<Look>; edit: Edit; dimension: string }
  /** The job is closed: nothing of it need be held any more. There is no answer. */
  | { kind: 'forget' }

/** A table is sent whole when the job was, or when none was since then. */
export type FromWorker =
  | { kind: 'table'; n: number; table: Sent<Table> }
  | { kind: 'trial'; ask: number; row: TableRow | null; because: AnyReason | null }
  | { kind: 'failed'; n: number; because: AnyReason }
