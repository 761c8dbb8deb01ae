import '../../card/card-numbers.css'
import { calibrationNumbers, isCalibrated } from '../../../core/handoff/table/view-lines.ts'
import type { View } from '../../../core/job/model/types.ts'
import { calledByFigure } from '../../../core/ledger/views/name-known-sizes.ts'
import { useBench } from '../../bench/bench-store.ts'
import { Section } from '../../parts/section.tsx'
import { plainNumber } from './plain-figures.ts'

/** What stands behind the words of a view's fit, for those who reckon with it. */
export function FitNumbers({ view }: { view: View }) {
  const table = useBench((bench) => bench.table)
  const row = table?.views.find(({ id }) => id === view.id)
  if (table === null || row === undefined || !isCalibrated(row)) return null
  const called = (id: string): string => {
    const reference = view.references.find((one) => one.id === id)
    return reference === undefined ? id : calledByFigure(reference, view.references)
  }
  const tested = row.references.some(({ w }) => w !== 0)
  return (
    <Section title="The numbers behind it" fold="shut">
      <p className="block-soft">{calibrationNumbers(row, table.unit)}.</p>
      {tested && (
        <>
          <table className="card-numbers">
            <thead>
              <tr>
                <th scope="col">figured size</th>
                <th scope="col">w</th>
              </tr>
            </thead>
            <tbody>
              {row.references.map(({ id, part, w }) => (
                <tr key={`${id} ${part ?? ''}`}>
                  <th scope="row">
                    {called(id)}
                    {part === undefined ? '' : `, ${part}`}
                  </th>
                  <td>{plainNumber(w, 1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="block-soft">
            w: how far a size is from what the others make of it, in standard deviations of that (Baarda
            1968); beyond 3.3 it may be wrong.
          </p>
        </>
      )}
    </Section>
  )
}
