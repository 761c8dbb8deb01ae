import '../../card/card-numbers.css'
import { calibrationNumbers, isCalibrated } from '../../../core/handoff/table/view-lines.ts'
import type { View } from '../../../core/job/model/types.ts'
import { useBench } from '../../bench/bench-store.ts'
import { Section } from '../../parts/section.tsx'
import { plainNumber } from './plain-figures.ts'

/** What stands behind the words of a view's fit, for those who reckon with it. */
export function FitNumbers({ view }: { view: View }) {
  const table = useBench((bench) => bench.table)
  const row = table?.views.find(({ id }) => id === view.id)
  if (table === null || row === undefined || !isCalibrated(row)) return null
  const tested = row.references.some(({ w }) => w !== 0)
  return (
    <Section title="The numbers behind it" fold="shut">
      <p className="block-soft">{calibrationNumbers(row, table.unit)}.</p>
      {tested && (
        <>
          <table className="card-numbers">
            <thead>
              <tr>
                <th scope="col">known size</th>
                <th scope="col">w</th>
              </tr>
            </thead>
            <tbody>
              {row.references.map(({ id, label, part, w }) => (
                <tr key={`${id} ${part ?? ''}`}>
                  <th scope="row">
                    {label ?? id}
                    {part === undefined ? '' : `, ${part}`}
                  </th>
                  <td>{plainNumber(w, 1)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="block-soft">
            w: how far a size is from what the others make of it, in standard deviations of that (Baarda
            1968); beyond 3.3 it is in doubt.
          </p>
        </>
      )}
    </Section>
  )
}
