import type { Truth } from '../../samples/draw/make-job.ts'
import type { TrueValue } from '../../samples/draw/true-values.ts'
import type { Table, TableRow } from '../../src/core/ledger/table/table.ts'

/** One scaled value against the truth, in the units of the table. */
export interface ScaledError {
  name: string
  error: number
  /** Expanded uncertainty at 95 %. */
  U: number
}

/** What one unit of the truth file is in the units of an inch table. */
const perUnit: Record<TrueValue['unit'], number> = { mm: 1 / 25.4, 'mm²': 1 / 25.4 ** 2, '°': 1, '1': 1 }

const aloneScaled = (row: TableRow) =>
  row.basis === 'scaled' && row.evidence.filter(({ basis }) => basis === 'scaled').length === 1

/** Every scaled value of a table with its error; a row that adopts its scaled value brings its own U. */
export function scaledErrors(table: Table, truth: Truth): ScaledError[] {
  return table.rows.flatMap((row) => {
    const known = truth.dimensions[row.name]
    if (known === undefined) throw new Error(`The truth file has no value for ${row.name}.`)
    const value = known.value * perUnit[known.unit]
    return row.evidence.flatMap((evidence) =>
      evidence.basis !== 'scaled' || evidence.value === null
        ? []
        : [
            {
              name: row.name,
              error: evidence.value - value,
              U: aloneScaled(row) ? row.U : 1.96 * evidence.u,
            },
          ],
    )
  })
}

export const held = ({ error, U }: ScaledError): boolean => Math.abs(error) <= U
