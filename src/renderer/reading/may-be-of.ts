import { spreadOf } from '../../core/handoff/table/stated-value.ts'
import { lengthContext } from '../../core/job/model/length-context.ts'
import type { Job } from '../../core/job/model/types.ts'
import type { Table, TableRow } from '../../core/ledger/table/table.ts'
import { lengthIn } from '../../core/quantity/length.ts'
import { figureOrNone } from '../../core/quantity/parse/figure-or-none.ts'

/** A dimension that a figure may be of, for it comes to the same without it. */
export interface MayBeOf {
  name: string
  label: string
  /** What it comes to: `14.371" ± 0.040"`. */
  comesTo: string
}

/** What lies within so many standard uncertainties comes to the same. */
const SAME = 2
/** More than these are no help. */
const MOST = 2

/** A figure's length in the unit of the table; null where it is none. */
function lengthOf(text: string, job: Job, unit: Table['unit']): number | null {
  const length = figureOrNone(text, lengthContext(job))?.length
  return length === undefined ? null : lengthIn(length, unit)
}

const hasFigure = (row: TableRow): boolean => row.evidence.some(({ basis }) => basis === 'printed')

/**
 * The dimensions without a figure of their own that come to the same length, the nearest first.
 * @param texts all that the figure could be
 */
export function mayBeOf(texts: readonly string[], job: Job, table: Table | null): MayBeOf[] {
  if (table === null) return []
  const lengths = texts.map((text) => lengthOf(text, job, table.unit)).filter((length) => length !== null)
  const rows = table.rows.flatMap((row) => {
    const { kind, value, u } = row
    if (kind !== 'length' || value === null || u <= 0 || hasFigure(row)) return []
    const times = Math.min(...lengths.map((length) => Math.abs(value - length) / u))
    return times <= SAME ? [{ row, times }] : []
  })
  return rows
    .sort((a, b) => a.times - b.times)
    .slice(0, MOST)
    .map(({ row }) => ({
      name: row.name,
      label: row.label || row.name,
      comesTo: `${row.written}${spreadOf(row, row.kind, table.unit)}`,
    }))
}
