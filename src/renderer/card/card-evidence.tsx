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
          u: the standard uncertainty with which each is compared; a printed figure counts as ± half its last
          graduation, or its tolerance. E_n: the largest difference from the others, in the 95 % uncertainty
          of the two; above 1 they dispute.
        </p>
      )}
    </Section>
  )
}
