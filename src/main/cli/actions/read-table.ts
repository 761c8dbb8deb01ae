import { isCalibrated } from '../../../core/handoff/table/view-lines.ts'
import { dimensionTable } from '../../../core/ledger/table/dimension-table.ts'
import type { Table, TableView } from '../../../core/ledger/table/table.ts'
import type { Look } from '../../../core/ledger/units/look.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
import { isUnsound, type SheetScan, verifyScans } from '../../services/scans/kept/verify-scans.ts'
import { CliError } from '../words/cli-error.ts'
import { type CliReason, reason } from '../words/cli-words.ts'

export interface ReadTable {
  table: Table
  scans: SheetScan[]
  /** What was set aside of the history. */
  warning?: AnyReason
  /** A scan that is missing or changed: what it means, and how many more there are. */
  scanProblem?: CliReason
  /** A view that can't be calibrated: which, and how many more there are; the table says why. */
  viewProblem?: CliReason
}

function scanProblemOf(scans: readonly SheetScan[]): CliReason | undefined {
  const [first, ...others] = scans.filter(isUnsound)
  if (first === undefined) return undefined
  return reason('cli.scan-problem', { first: first.problem, more: others.length })
}

const isUncalibrated = (view: TableView): boolean => view.problem !== undefined && !isCalibrated(view)

function viewProblemOf({ views }: Table): CliReason | undefined {
  const [first, ...others] = views.filter(isUncalibrated)
  if (first === undefined) return undefined
  const uncalibrated = reason('cli.view-uncalibrated', {
    view: first.id,
    name: first.name,
    more: others.length,
  })
  return first.label === undefined ? uncalibrated : { ...uncalibrated, names: { [first.id]: first.label } }
}

/**
 * A job's table as its folder holds it, for printing. Changes nothing on disk.
 * @param look how it is looked at
 * @throws ServiceError for a folder that holds no sound job; CliError for a job without dimensions.
 */
export async function readTable(folder: string, look: Partial<Look> = {}): Promise<ReadTable> {
  const { job, warning } = await readJobFolder(folder)
  const scans = await verifyScans(job, folder)
  const scanProblem = scanProblemOf(scans)
  if (job.dimensions.length === 0 && scanProblem === undefined) {
    throw new CliError(reason('cli.no-dimensions', { folder }))
  }
  const table = dimensionTable(job, look)
  const viewProblem = viewProblemOf(table)
  return {
    table,
    scans,
    ...(warning === undefined ? {} : { warning }),
    ...(scanProblem === undefined ? {} : { scanProblem }),
    ...(viewProblem === undefined ? {} : { viewProblem }),
  }
}
