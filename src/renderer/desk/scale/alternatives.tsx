import './alternatives.css'
import { hasSetAside } from '../../../core/handoff/table/view-lines.ts'
import type { Unit, View } from '../../../core/job/model/types.ts'
import type { TableView } from '../../../core/ledger/table/table.ts'
import { calledByFigure } from '../../../core/ledger/views/name-known-sizes.ts'
import { choose } from '../../bench/choose.ts'
import { Button } from '../../parts/button.tsx'
import { percentLonger } from './fit-words.ts'

interface AlternativesProps {
  view: View
  row: TableView
  unit: Unit
}

/** Figured sizes that may be wrong where nothing decides, one beside the other, and what each would change. */
export function Alternatives({ view, row, unit }: AlternativesProps) {
  if (row.alternatives === undefined) return null
  const known = new Map(view.references.map((one) => [one.id, one]))
  return (
    <div className="alternatives">
      <table>
        <caption>
          {hasSetAside(row) ? 'What else may be wrong' : 'What may be wrong'}, and how lengths would change
        </caption>
        <thead>
          <tr>
            <th scope="col">If wrong</th>
            <th scope="col">along</th>
            <th scope="col">across</th>
          </tr>
        </thead>
        <tbody>
          {row.alternatives.map(({ leftOut, longerAlong, longerAcross, along, across }) => (
            <tr key={leftOut.join()}>
              <th scope="row">
                {leftOut.map((id) => {
                  const one = known.get(id)
                  return (
                    one !== undefined && (
                      <Button
                        key={id}
                        kind="quiet"
                        onPress={() => choose({ kind: 'reference', view: view.id, id })}
                      >
                        {calledByFigure(one, view.references)}
                      </Button>
                    )
                  )
                })}
              </th>
              <td title={`${along.toPrecision(5)} ${unit} a pixel`}>{percentLonger(longerAlong)}</td>
              <td title={`${across.toPrecision(5)} ${unit} a pixel`}>{percentLonger(longerAcross)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {row.alternatives.map(({ says }) => (
        <p className="block-soft" key={says}>
          {says}
        </p>
      ))}
    </div>
  )
}
