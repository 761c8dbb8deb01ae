import './draft-verdict.css'
import { Figure } from '../parts/figure.tsx'
import type { Drafted } from './new-evidence.ts'

/** How what is being written is understood, or what is wrong with it and where reading stopped. */
export function DraftVerdict({ drafted }: { drafted: Drafted }) {
  return (
    <div className="draft-verdict" role="status">
      {drafted !== null && 'understood' in drafted && <Figure text={drafted.understood} />}
      {drafted !== null && 'sentence' in drafted && (
        <>
          {drafted.text !== undefined && drafted.at !== undefined && (
            <p className="draft-verdict-place" aria-hidden="true">
              {drafted.text.slice(0, drafted.at)}
              <mark className="draft-verdict-stop">{drafted.text.slice(drafted.at) || '\u00a0'}</mark>
            </p>
          )}
          <p className="draft-verdict-wrong">{drafted.sentence}</p>
        </>
      )}
    </div>
  )
}
