import './dimension-table.css'
import { useBench } from '../bench/bench-store.ts'
import { NewDimensionDialog } from '../entering/new-dimension-dialog.tsx'
import { InstrumentsDialog } from '../instruments/instruments-dialog.tsx'
import { PrintedTable } from '../taking-out/printed-table.tsx'
import { TableCautions } from './table-cautions.tsx'
import { TableEmpty } from './table-empty.tsx'
import { TableGrid } from './table-grid.tsx'
import { TableTools } from './table-tools.tsx'
import { useDimensionRows } from './use-dimension-rows.ts'

/** The table of the job that is open; fills its box. While a newer one is worked out the last one stands. */
export function DimensionTable() {
  const table = useBench((bench) => bench.table)
  const working = useBench(
    ({ opened, table, tableOf, unit, figuresAs }) =>
      opened !== null &&
      (tableOf !== opened.n || table?.unit !== (unit ?? opened.job.unit) || table.figuresAs !== figuresAs),
  )
  const rows = useDimensionRows(table?.rows)
  const total = table?.rows.length ?? 0
  return (
    <section className="dimension-table" aria-label="Table of dimensions" aria-busy={working}>
      <TableTools rows={rows} total={total} working={working} />
      {table === null || rows.rows.length === 0 ? (
        <TableEmpty onShowAll={total > 0 && rows.narrowed ? rows.showAll : null} />
      ) : (
        <TableGrid rows={rows} unit={table.unit} />
      )}
      <InstrumentsDialog />
      <NewDimensionDialog />
      <PrintedTable />
      <TableCautions table={table} />
    </section>
  )
}
