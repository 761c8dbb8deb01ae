import './table-empty.css'
import { useBench } from '../bench/bench-store.ts'
import { goTo } from '../bench/choose.ts'
import { Button } from '../parts/button.tsx'

/** Instead of rows: what the table is for, and what to do first. */
export function TableEmpty({ onShowAll }: { onShowAll: (() => void) | null }) {
  const opened = useBench((bench) => bench.opened)
  const computed = useBench((bench) => bench.table !== null)
  if (opened === null) {
    return <p className="table-empty">No job is open. Its dimensions will stand here, each with its ±.</p>
  }
  if (onShowAll !== null) {
    return (
      <div className="table-empty">
        <p>No dimension is like that.</p>
        <Button onPress={onShowAll}>Show all rows</Button>
      </div>
    )
  }
  if (!computed) return <p className="table-empty">The table is being worked out.</p>
  const { views } = opened.job
  const scaled = views.some(({ references }) => references.length > 0)
  return (
    <div className="table-empty">
      <p>
        No dimensions yet. Each one that you pick on the sheet will stand here: its name, its figure with ± U
        at 95 %, what it rests on and whether the evidence agrees.
      </p>
      <Button onPress={() => goTo(scaled ? 'pick' : 'scale')}>
        {scaled ? 'Pick the first dimension' : 'First set the scale of a view'}
      </Button>
    </div>
  )
}
