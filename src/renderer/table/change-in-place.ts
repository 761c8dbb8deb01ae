import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Dimension, Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { mint } from '../bench/mint.ts'
import { draftedFormula, formulaInLine } from '../entering/formula-in-line.ts'
import { type Drafted, drafted } from '../entering/new-evidence.ts'
import { lineEdit, lineOf, readingsInLine } from '../entering/readings-in-line.ts'
import { currentInstrument } from '../instruments/at-hand.ts'
import { refusalOf } from '../words/refusal.ts'
import { reason } from '../words/window-words.ts'
import { type ColumnName, EDITABLE } from './columns.ts'

/** What comes of a text that was put in a cell: an edit, why not, or neither when nothing changed. */
type Change = { edit: Edit } | { refused: AnyReason } | null

/** Whether a cell can be changed where it stands: of figures, those that a formula gives. */
export function isChangedInPlace(job: Job, name: string, column: ColumnName): boolean {
  const dimension = dimensionOf(job, name)
  if (dimension === undefined || !EDITABLE.has(column)) return false
  return column !== 'figure' || formulaInLine(dimension) !== undefined
}

const dimensionOf = (job: Job, name: string): Dimension | undefined =>
  job.dimensions.find((d) => d.name === name)

/** The text that a cell is edited from. */
export function textInPlace(job: Job, name: string, column: ColumnName): string {
  const dimension = dimensionOf(job, name)
  if (dimension === undefined) return column === 'name' ? name : ''
  switch (column) {
    case 'label':
      return dimension.label
    case 'count':
      return String(dimension.count ?? 1)
    case 'figure':
      return formulaInLine(dimension)?.formula ?? ''
    case 'original': {
      const readings = readingsInLine(dimension, currentInstrument()?.id)
      return readings === undefined ? '' : lineOf(readings, dimension)
    }
    default:
      return name
  }
}

/** Reads what was put in a cell and tries it on the job, so that what is wrong is said beside the cell. */
export function changeInPlace(job: Job, name: string, column: ColumnName, text: string): Change {
  const dimension = dimensionOf(job, name)
  if (dimension !== undefined && column === 'original') {
    return changeOf(drafted(() => lineChange(text, dimension, job)))
  }
  if (dimension !== undefined && column === 'figure') return changeOf(draftedFormula(text, dimension, job))
  const wanted = text.trim()
  if (wanted === textInPlace(job, name, column)) return null
  const read = editFor(name, column, wanted)
  if ('refused' in read) return read
  const refused = refusalOf(() => applyEdit(job, readEdit(read.edit)))
  return refused === null ? read : { refused }
}

/** Without what it would come to: that is said while it is being written. */
function lineChange(text: string, dimension: Dimension, job: Job): Drafted {
  const made = lineEdit(text, dimension, job, { mint, instrument: currentInstrument()?.id })
  if (made === null) return null
  applyEdit(job, readEdit(made.edit))
  return { edit: made.edit, understood: '', also: [] }
}

function changeOf(drafted: Drafted): Change {
  if (drafted === null) return null
  return 'edit' in drafted ? { edit: drafted.edit } : { refused: drafted.refused }
}

function editFor(name: string, column: ColumnName, text: string): NonNullable<Change> {
  switch (column) {
    case 'name':
      if (text === '') return { refused: reason('written.no-dimension-name') }
      return { edit: { do: 'rename-dimension', name, to: text } }
    case 'label':
      if (text === '') return { refused: reason('written.no-label') }
      return { edit: { do: 'change-dimension', name, set: { label: text } } }
    case 'count': {
      const count = /^\d{1,6}$/.test(text) ? Number(text) : 0
      if (count < 1) return { refused: reason('written.no-count') }
      return { edit: { do: 'change-dimension', name, set: { count } } }
    }
    default:
      return { refused: reason('written.worked-out') }
  }
}
