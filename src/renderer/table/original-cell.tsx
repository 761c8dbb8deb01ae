import { spreadOf } from '../../core/handoff/table/stated-value.ts'
import type { Unit } from '../../core/job/model/types.ts'
import type { TableEvidence, TableRow } from '../../core/ledger/table/table.ts'
import type { Found } from '../entering/readings-in-line.ts'
import { Figure } from '../parts/figure.tsx'

interface OriginalCellProps {
  row: TableRow
  readings: Found
  /** That the row is in. */
  unit: Unit
}

const weighedIn = ({ evidence }: TableRow, { id }: Found): TableEvidence | undefined =>
  evidence.find((piece) => piece.id === id)

const meanOf = (weighed: TableEvidence, row: TableRow, unit: Unit): string =>
  `${weighed.written}${spreadOf(weighed, row.kind, unit)}`

/** `of 3`: how many readings the mean is of. */
const howMany = ({ readings }: Found): string => (readings.length === 1 ? '' : `of ${readings.length}`)

const DOES_NOT_FIT = 'does not fit'

/** The mean of the readings on the original, with its ± and how many they are; in words what does not fit. */
export function OriginalCell({ row, readings, unit }: OriginalCellProps) {
  const weighed = weighedIn(row, readings)
  // The table that has them is being worked out.
  if (weighed === undefined) return readings.readings.join('; ')
  if (weighed.value === null) return <span className="table-grid-misfit">{weighed.problem}</span>
  return (
    <>
      <Figure text={meanOf(weighed, row, unit)} />
      {weighed.odd === true && <span className="table-grid-misfit">{DOES_NOT_FIT}</span>}
      <span className="table-grid-many">{howMany(readings)}</span>
    </>
  )
}

/** The same in one text, with the readings themselves and what is to be said of them. */
export function wholeOriginal(row: TableRow, readings: Found, unit: Unit): string {
  const weighed = weighedIn(row, readings)
  const mean =
    weighed === undefined || weighed.value === null
      ? []
      : [`${meanOf(weighed, row, unit)} ${howMany(readings)}`.trim()]
  const odd = weighed?.odd === true ? ['It does not fit the rest of the evidence.'] : []
  const problem = weighed?.problem === undefined ? [] : [weighed.problem]
  return [
    ...mean,
    `Read: ${readings.readings.join('; ')}`,
    ...problem,
    ...odd,
    ...(weighed?.remarks ?? []),
  ].join('\n')
}
