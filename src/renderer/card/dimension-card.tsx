import './dimension-card.css'
import { useBench } from '../bench/bench-store.ts'
import { HistorySection } from '../history/history-section.tsx'
import { AddEvidence } from './add-evidence.tsx'
import { CardAdoption } from './card-adoption.tsx'
import { CardBudget } from './card-budget.tsx'
import { CardEvidence } from './card-evidence.tsx'
import { CardHead } from './card-head.tsx'
import { CardNumbers } from './card-numbers.tsx'
import { CardParticulars } from './card-particulars.tsx'

/** All that is known of one dimension. While the table is worked out anew, its last row stands. */
export function DimensionCard({ name }: { name: string }) {
  const job = useBench((bench) => bench.opened?.job)
  const writable = useBench((bench) => bench.opened?.writable === true)
  const table = useBench((bench) => bench.table)
  const dimension = job?.dimensions.find((one) => one.name === name)
  const row = table?.rows.find((one) => one.name === name)
  if (job === undefined || dimension === undefined) {
    return <p className="dimension-card-gone">There is no dimension {name} any more.</p>
  }
  const unit = table?.unit ?? job.unit
  const all = { job, dimension, row, unit, writable }
  return (
    <article className="dimension-card" aria-label={`Card of ${name}`}>
      <CardHead {...all} />
      <CardEvidence {...all} />
      <AddEvidence {...all} />
      {row !== undefined && (writable || dimension.adopt !== undefined) && (
        <CardAdoption {...all} row={row} />
      )}
      {row !== undefined && <CardBudget row={row} />}
      <CardNumbers {...all} />
      <CardParticulars {...all} />
      <HistorySection of={{ kind: 'dimension', id: name }} />
    </article>
  )
}
