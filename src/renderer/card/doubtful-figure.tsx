import './doubtful-figure.css'
import type { Edit } from '../../core/job/edits/edit.ts'
import { called } from '../../core/job/ids/label.ts'
import type { Evidence, Job } from '../../core/job/model/types.ts'
import type { Table } from '../../core/ledger/table/table.ts'
import { plusMinus } from '../../core/ledger/units/plus-minus.ts'
import type { QuantityKind } from '../../core/quantity/quantity-kind.ts'
import { makeEdit } from '../bench/edits.ts'
import { Button } from '../parts/button.tsx'
import { Figure } from '../parts/figure.tsx'
import { chanceWords } from '../reading/chance-words.ts'

type Doubtful = NonNullable<Table['doubtful']>[number]
type Candidate = Doubtful['candidates'][number]

interface DoubtfulFigureProps {
  job: Job
  dimension: string
  piece: Evidence
  /** As the table has it. */
  doubtful: Doubtful
  unit: Table['unit']
  writable: boolean
}

/** All that a figure could be which is hard to read, weighed by the rest, and what each would do to its sums. */
export function DoubtfulFigure({ job, dimension, piece, doubtful, unit, writable }: DoubtfulFigureProps) {
  const kindOf = (name: string) => job.dimensions.find((one) => one.name === name)?.kind ?? 'length'
  const { candidates, besides, none } = doubtful
  return (
    <section className="doubtful-figure" aria-label={`What ${called('evidence', piece)} could be`}>
      <p className="dimension-card-small">
        {besides === 0
          ? 'It could be, by its strokes alone:'
          : 'It could be, weighed by the rest of the evidence:'}
      </p>
      <ol>
        {candidates.map((candidate) => (
          <li key={candidate.text}>
            <p className="doubtful-figure-one">
              <span className="doubtful-figure-text">
                <Figure text={candidate.text} />
              </span>
              <span>{chanceWords(candidate.probability)}</span>
              {writable && (
                <Button
                  kind="quiet"
                  label={`It is this: ${candidate.text}`}
                  hint="It is kept as a clear figure from then on, with all that it could have been."
                  onPress={() => void makeEdit(decided(dimension, piece, candidate.text))}
                >
                  It is this
                </Button>
              )}
            </p>
            <Consequences candidate={candidate} given={besides > 0} kindOf={kindOf} unit={unit} />
          </li>
        ))}
      </ol>
      {none >= 0.01 && <p className="dimension-card-small">None of these: {chanceWords(none)}.</p>}
    </section>
  )
}

/** A person's decision what a figure is: it is clear by now, and what it could have been stays with it. */
const decided = (dimension: string, piece: Evidence, text: string): Edit => ({
  do: 'several',
  name: `read ${called('evidence', piece)} of ${dimension} as ${text}`,
  edits: [{ do: 'change-evidence', dimension, id: piece.id, set: { text, legibility: 'clear' } }],
})

/** What would follow, a sentence each. */
function Consequences({
  candidate,
  given,
  kindOf,
  unit,
}: {
  candidate: Candidate
  /** Whether more than the strokes was weighed. */
  given: boolean
  kindOf: (dimension: string) => QuantityKind
  unit: Table['unit']
}) {
  const { relations, dimensions, value } = candidate
  return (
    <ul className="doubtful-figure-then">
      {given && Math.abs(candidate.given - candidate.probability) >= 0.01 && (
        <li>{chanceWords(candidate.given)} by the strokes alone.</li>
      )}
      {value === null && <li>No size of this kind.</li>}
      {relations.map(({ id, text, holds, missesBy, problem }) => (
        <li key={id} data-off={(problem === undefined && !holds) || undefined}>
          {problem !== undefined ? (
            <>
              <code>{text}</code> could not be checked.
            </>
          ) : holds ? (
            <>
              <code>{text}</code> would close.
            </>
          ) : (
            <>
              <code>{text}</code> would miss by <Figure text={missesBy} />.
            </>
          )}
        </li>
      ))}
      {dimensions.map(({ name, written, U, value: comes }) => (
        <li key={name}>
          <code>{name}</code> would be{' '}
          {comes === null ? (
            'without a value'
          ) : (
            <Figure text={`${written}${plusMinus(U, kindOf(name), unit)}`} />
          )}
          .
        </li>
      ))}
    </ul>
  )
}
