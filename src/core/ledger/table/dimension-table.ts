import type { Job } from '../../job/model/types.ts'
import { assess } from '../assessment/assessment.ts'
import type { Look } from '../units/look.ts'
import type { Table } from './table.ts'
import { type WorkedOut, workOutTable } from './work-out-table.ts'

/** What tables were worked out from, as long as anybody has them. */
const WORKED_OUT = new WeakMap<Table, WorkedOut>()

/**
 * The table of a job: every dimension with its adopted value, uncertainty, basis and status.
 * Lengths in `unit`, areas in its square, angles in degrees.
 * @param job as `readJob` or `applyEdit` gives it
 * @param options unit: that the table is looked at in, the job's own unless said otherwise. A bare number in a figure
 *   means the job's own whatever this is.
 *   figuresAs: whether exact inches are set in fractions, as the shop writes them, or in decimals.
 *   before: the table of the job that this one was made from by `applyEdit`, looked at in the same way. What the edits leave
 *   alone is taken from it, so that only what rests on something that changed is worked out anew; the table comes out
 *   the same. What both jobs hold must not have been changed in place. A table holds on to what it was worked out from
 */
export function dimensionTable(job: Job, options: Partial<Look> & { before?: Table } = {}): Table {
  const before = options.before && WORKED_OUT.get(options.before)
  const workedOut = workOutTable(assess(job, options, before?.assessment), before)
  WORKED_OUT.set(workedOut.table, workedOut)
  return workedOut.table
}
