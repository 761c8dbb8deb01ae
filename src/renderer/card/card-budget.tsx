import type { TableRow } from '../../core/ledger/table/table.ts'
import { BudgetBar } from '../parts/budget-bar.tsx'
import { Section } from '../parts/section.tsx'

/** Where the uncertainty of the value comes from. */
export function CardBudget({ row }: { row: TableRow }) {
  return (
    <Section title="Where the uncertainty comes from">
      {row.budget.length === 0 ? (
        <p className="dimension-card-soft">
          {row.value === null
            ? 'There is no value yet.'
            : 'A clear figure is taken as it stands: it has no uncertainty of its own here.'}
        </p>
      ) : (
        <BudgetBar budget={row.budget} />
      )}
    </Section>
  )
}
