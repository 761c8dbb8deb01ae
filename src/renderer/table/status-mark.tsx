import { statusWord } from '../../core/words/status-word.ts'
import './status-mark.css'
import type { Status } from '../../core/ledger/table/table.ts'
import { VisuallyHidden } from '../parts/visually-hidden.tsx'

interface StatusMarkProps {
  status: Status
  /** Whether it is part of a sum that does not add up, whatever its own evidence says. */
  sumOut?: boolean
  /** Whether it rests on a scale that nothing checks, or that may be wrong. */
  unchecked?: boolean
}

/** How the evidence of a dimension stands, as a drawn sign and in its word. */
export function StatusMark({ status, sumOut = false, unchecked = false }: StatusMarkProps) {
  return (
    <span className={`status-mark status-mark-${status}`}>
      <StatusSign status={status} />
      {statusWord(status)}
      {unchecked && (
        <span
          className="status-mark-unchecked"
          title="Nothing checks the scale that it rests on, or it may be wrong"
        >
          <VisuallyHidden>, on a scale that nothing checks or that may be wrong</VisuallyHidden>
          <svg className="status-mark-sign" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
            <path d="M4 5A3 3 0 1 1 7 7.8V9M7 11.2V12.4" />
          </svg>
        </span>
      )}
      {sumOut && (
        <span className="status-mark-out" title="Part of a sum that does not add up">
          <VisuallyHidden>, part of a sum that does not add up</VisuallyHidden>
          <svg className="status-mark-sign" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
            <path d="M2 5H12M2 9H12M10 1.5L4 12.5" />
          </svg>
        </span>
      )}
    </span>
  )
}

/** The sign alone, for what has its word elsewhere. */
export function StatusSign({ status }: { status: Status }) {
  return (
    <svg className="status-mark-sign" viewBox="0 0 14 14" aria-hidden="true" focusable="false">
      <path d={SIGNS[status]} />
    </svg>
  )
}

/** Agreed: two strokes that meet. Unchecked: one stroke. Disputed: two that point against each other. No value: a ring. */
const SIGNS: Record<Status, string> = {
  agreed: 'M2 7.5L5.5 11L12 3',
  single: 'M7 2.5V11.5',
  disputed: 'M1 7H5.5M3.5 4.5L6 7L3.5 9.5M13 7H8.5M10.5 4.5L8 7L10.5 9.5',
  open: 'M7 2.5A4.5 4.5 0 1 0 7 11.5A4.5 4.5 0 1 0 7 2.5Z',
}
