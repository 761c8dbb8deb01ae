import './draft-verdict.css'
import { isQuestion } from '../../core/ledger/evidence/figure-remarks.ts'
import { Figure } from '../parts/figure.tsx'
import { sentenceOf } from '../words/window-words.ts'
import type { Drafted } from './new-evidence.ts'

/** How what is being written is understood, or what is wrong with it and where reading stopped. */
export function DraftVerdict({ drafted }: { drafted: Drafted }) {
  return (
    <div className="draft-verdict" role="status">
      {drafted !== null && 'understood' in drafted && (
        <>
          {drafted.understood !== '' && <Figure text={drafted.understood} />}
          {drafted.also.map((one) => (
            <p
              key={`${one.code} ${sentenceOf(one)}`}
              className={isQuestion(one) ? 'draft-verdict-question' : 'draft-verdict-also'}
            >
              {sentenceOf(one)}
            </p>
          ))}
        </>
      )}
      {drafted !== null && 'refused' in drafted && (
        <>
          {drafted.stopped !== undefined && <WhereItStopped {...drafted.stopped} />}
          <p className="draft-verdict-wrong">{sentenceOf(drafted.refused)}</p>
        </>
      )}
    </div>
  )
}

function WhereItStopped({ text, at }: { text: string; at: number }) {
  return (
    <p className="draft-verdict-place" aria-hidden="true">
      {text.slice(0, at)}
      <mark className="draft-verdict-stop">{text.slice(at) || '\u00a0'}</mark>
    </p>
  )
}
