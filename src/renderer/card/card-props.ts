import type { Dimension, Job, Unit } from '../../core/job/model/types.ts'
import type { TableRow } from '../../core/ledger/table/table.ts'

/** What every part of a card is given. */
export interface CardProps {
  job: Job
  dimension: Dimension
  /** Its row of the table; undefined until the table is worked out. */
  row: TableRow | undefined
  /** That the row is in. */
  unit: Unit
  writable: boolean
}
