import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Dimension, Evidence, Job } from '../../core/job/model/types.ts'
import { reason } from '../words/window-words.ts'
import { checkFormulaAlone, type Drafted, drafted } from './new-evidence.ts'

type Derived = Extract<Evidence, { basis: 'derived' }>

/** The formula of a dimension that is written in one line: the only one that counts; undefined where there is none such. */
export function formulaInLine({ evidence }: Dimension): Derived | undefined {
  const [only, ...more] = evidence.filter(
    (piece): piece is Derived => piece.basis === 'derived' && piece.withdrawn === undefined,
  )
  return more.length === 0 ? only : undefined
}

/** What comes of a formula that was written in the place of the one that a dimension has; null: nothing is changed. */
export function draftedFormula(text: string, dimension: Dimension, job: Job): Drafted {
  const before = formulaInLine(dimension)
  if (before === undefined) return { refused: reason('written.worked-out') }
  const formula = text.trim()
  if (formula === before.formula) return null
  if (formula === '') return { refused: reason('written.no-formula') }
  const edit: Edit = {
    do: 'change-evidence',
    dimension: dimension.name,
    id: before.id,
    set: { formula },
  }
  return drafted(() => {
    checkFormulaAlone(formula, job)
    applyEdit(job, readEdit(edit))
    return { edit, understood: '', also: [] }
  })
}
