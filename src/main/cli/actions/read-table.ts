import { dimensionTable } from '../../../core/ledger/table/dimension-table.ts'
import type { Table, TableView } from '../../../core/ledger/table/table.ts'
import { readJobFolder } from '../../services/job-folder/read-job-folder.ts'
import { type SheetScan, verifyScans } from '../../services/scans/kept/verify-scans.ts'
import { ServiceError } from '../../services/service-error.ts'
import { inWords } from '../../services/words/services-words.ts'

export interface ReadTable {
  table: Table
  scans: SheetScan[]
  /** What was dropped from the journal. */
  warning?: string
  /** A scan that is missing or changed: what it means, and how many more there are. */
  scanProblem?: string
  /** A view that can't be calibrated: which, and how many more there are; the table says why. */
  viewProblem?: string
}

function firstOf(sentences: readonly string[]): string | undefined {
  const [first] = sentences
  if (first === undefined || sentences.length === 1) return first
  return `${first.replace(/\.$/, '')} (and ${sentences.length - 1} more)`
}

const uncalibrated = (view: TableView): string[] =>
  view.problem === undefined || Object.keys(view.parameters).length > 0
    ? []
    : [
        `View ${view.id} "${view.name}" can't be calibrated, so no value is scaled off it; the output says why.`,
      ]

/**
 * A job's table as its folder holds it, for printing. Changes nothing on disk.
 * @throws ServiceError for a folder that holds no sound job, or a job without dimensions.
 */
export async function readTable(folder: string): Promise<ReadTable> {
  const { job, warning } = await readJobFolder(folder)
  const scans = await verifyScans(job, folder)
  const scanProblem = firstOf(scans.flatMap(({ sentence }) => (sentence === '' ? [] : [sentence])))
  if (job.dimensions.length === 0 && scanProblem === undefined) {
    throw new ServiceError(
      `The job ${folder} has no dimensions yet, so there is no table: add some with "scantling edit ${folder}".`,
    )
  }
  const table = dimensionTable(job)
  const viewProblem = firstOf(table.views.flatMap(uncalibrated))
  return {
    table,
    scans,
    ...(warning === undefined ? {} : { warning: inWords(warning) }),
    ...(scanProblem === undefined ? {} : { scanProblem }),
    ...(viewProblem === undefined ? {} : { viewProblem }),
  }
}
