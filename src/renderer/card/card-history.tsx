import './card-history.css'
import { momentInWords, personName } from '../bench/signature.ts'
import { Section } from '../parts/section.tsx'
import type { CardProps } from './card-props.ts'
import { historyLines } from './history-lines.ts'

/** Who did what, and when, oldest first. */
export function CardHistory({ job, dimension }: CardProps) {
  const lines = historyLines(dimension, job)
  return (
    <Section title="History" fold="shut">
      {lines.length === 0 && <p className="dimension-card-soft">Nothing was done for it yet.</p>}
      <ol className="card-history">
        {lines.map(({ what, by, at }) => (
          <li key={`${at} ${what}`}>
            <span className="dimension-card-small">{momentInWords(at)}</span>
            <span>
              {personName(job, by)} {what}
            </span>
          </li>
        ))}
      </ol>
    </Section>
  )
}
