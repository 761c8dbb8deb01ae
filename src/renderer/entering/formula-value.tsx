import { spreadOf } from '../../core/handoff/table/stated-value.ts'
import type { Edit } from '../../core/job/edits/edit.ts'
import type { Job, Unit } from '../../core/job/model/types.ts'
import type { Trial } from '../findings/computer.ts'
import { Figure } from '../parts/figure.tsx'
import { sentenceOf } from '../words/window-words.ts'
import { useTrial } from './use-trial.ts'

interface FormulaValueProps {
  job: Job
  /** That would give the dimension the formula. Always the same one for the same formula. */
  edit: Edit
  dimension: string
  /** Of the evidence. */
  id: string
  unit: Unit
}

/** What a formula comes to, with its ±, before it is kept; or why it comes to nothing. */
export function FormulaValue({ job, edit, dimension, id, unit }: FormulaValueProps) {
  const trial = useTrial(job, { edit }, dimension, unit)
  return <p data-formula-value>{trial === null ? 'Working it out…' : <Value trial={trial} id={id} />}</p>
}

function Value({ trial: { row, unit, because }, id }: { trial: Trial; id: string }) {
  if (row === null) return <span className="draft-verdict-wrong">{sentenceOf(because)}</span>
  const piece = row.evidence.find((one) => one.id === id)
  if (piece === undefined || piece.value === null) {
    return <span className="draft-verdict-wrong">{piece?.problem ?? row.why}</span>
  }
  const spread = piece.exact === true ? '' : spreadOf(piece, row.kind, unit)
  return (
    <>
      {'= '}
      <Figure text={`${piece.written}${spread}`} />
    </>
  )
}
