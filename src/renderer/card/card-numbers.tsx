import './card-numbers.css'
import { countedDof } from '../../core/handoff/table/counted-dof.ts'
import { basisWord } from '../../core/job/ids/basis-word.ts'
import { afterNoun } from '../../core/job/ids/label.ts'
import { unitSuffix } from '../../core/ledger/units/plus-minus.ts'
import { twoFigures } from '../../core/quantity/format/rounding.ts'
import { Section } from '../parts/section.tsx'
import type { CardProps } from './card-props.ts'

/** What stands behind the words of the card, for those who reckon with it. */
export function CardNumbers({ dimension, row, unit }: CardProps) {
  if (row === undefined || row.value === null) return null
  const suffix = unitSuffix(dimension.kind, unit)
  const size = (x: number): string => `${twoFigures(x)}${suffix}`
  const dof = countedDof(row.dof)?.toPrecision(2) ?? 'over 1,000'
  return (
    <Section title="The numbers behind it" fold="shut">
      {row.u > 0 && (
        <p className="dimension-card-small">
          u {size(row.u)}, k {row.k.toFixed(2)}, U {size(row.U)} at 95 %; degrees of freedom {dof}.
        </p>
      )}
      <table className="card-numbers">
        <thead>
          <tr>
            <th scope="col">evidence</th>
            <th scope="col">u, compared</th>
            <th scope="col">E_n, largest</th>
          </tr>
        </thead>
        <tbody>
          {row.evidence
            .filter(({ value }) => value !== null)
            .map((one) => (
              <tr key={one.id}>
                <th scope="row">
                  {basisWord(one.basis)} {afterNoun(one)}
                </th>
                <td>{size(one.u)}</td>
                <td>{one.en === undefined ? '—' : one.en >= 100 ? 'over 100' : one.en.toFixed(1)}</td>
              </tr>
            ))}
        </tbody>
      </table>
      <p className="dimension-card-small">
        E_n: the difference from another piece of evidence, in the 95 % uncertainty of the two without what
        they share (ISO/IEC 17043).
      </p>
    </Section>
  )
}
