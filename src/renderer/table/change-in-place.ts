import { applyEdit, type Edit, readEdit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { refusalOf } from '../words/refusal.ts'
import { reason } from '../words/window-words.ts'
import type { ColumnName } from './columns.ts'

/** What comes of a text that was put in a cell: an edit, why not, or neither when nothing changed. */
type Change = { edit: Edit } | { refused: AnyReason } | null

/** The text that a cell is edited from. */
export function textInPlace(job: Job, name: string, column: ColumnName): string {
  const dimension = job.dimensions.find((d) => d.name === name)
  if (column === 'label') return dimension?.label ?? ''
  return column === 'count' ? String(dimension?.count ?? 1) : name
}

/** Reads what was put in a cell and tries it on the job, so that what is wrong is said beside the cell. */
export function changeInPlace(job: Job, name: string, column: ColumnName, text: string): Change {
  const wanted = text.trim()
  if (wanted === textInPlace(job, name, column)) return null
  const read = editFor(name, column, wanted)
  if ('refused' in read) return read
  const refused = refusalOf(() => applyEdit(job, readEdit(read.edit)))
  return refused === null ? read : { refused }
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
