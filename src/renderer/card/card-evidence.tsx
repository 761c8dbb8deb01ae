import { Section } from '../parts/section.tsx'
import './card-evidence.css'
import type { CardProps } from './card-props.ts'
import { EvidencePiece } from './evidence-piece.tsx'

/** Every piece of evidence, in the order in which it was given. */
export function CardEvidence(card: CardProps) {
  const { dimension, row } = card
  const { evidence } = dimension
  const compared = row?.evidence.some(({ value, u }) => value !== null && u > 0) === true
  return (
    <Section title={`Evidence (${evidence.length})`}>
      {evidence.length === 0 && (
        <p className="dimension-card-soft">
          Nothing says yet how large this is. Add what is printed or was measured, or pick it on the sheet.
        </p>
      )}
      <ul className="card-evidence">
        {evidence.map((piece) => {
          const weighed = row?.evidence.find(({ id }) => id === piece.id)
          return (
            <li key={piece.id}>
              <EvidencePiece
                {...card}
                piece={piece}
                weighed={weighed}
                governing={weighed?.governs ?? false}
              />
            </li>
          )
        })}
      </ul>
      {compared && (
        <p className="dimension-card-small">
          A printed figure is compared as ± half its last graduation, or as its tolerance says. What rests on
          the same picks or the same formula counts as one.
        </p>
      )}
    </Section>
  )
}
