import type { Edit } from '../../core/job/edit-types.ts'
import type { Job } from '../../core/job/types.ts'
import type { Table, TableRow } from '../../core/ledger/table.ts'

/** What the window asks of the worker that computes. */
export type ToWorker =
  /** The table of the job as it is after edit `n`. */
  | { kind: 'table'; n: number; job: Job }
  /** One row as it would be after an edit that is not made yet, or the same job looked at in another unit. */
  | { kind: 'trial'; ask: number; job: Job; edit: Edit; dimension: string }

export type FromWorker =
  | { kind: 'table'; n: number; table: Table }
  | { kind: 'trial'; ask: number; row: TableRow | null; sentence: string }
  /** What went wrong, as a sentence. */
  | { kind: 'failed'; n: number; sentence: string }
