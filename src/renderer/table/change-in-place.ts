import type { Edit } from '../../core/job/edits/edit.ts'
import { applyEdit, readEdit } from '../../core/job/edits/edit.ts'
import type { Job } from '../../core/job/model/types.ts'
import { refusalOf } from '../bench/refusal.ts'
import type { ColumnName } from './columns.ts'

/** What comes of a text that was put in a cell: an edit, a sentence why not, or neither when nothing changed. */
type Change = { edit: Edit } | { sentence: string } | null

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
  if ('sentence' in read) return read
  const sentence = refusalOf(() => applyEdit(job, readEdit(read.edit)))
  return sentence === '' ? read : { sentence }
}

function editFor(name: string, column: ColumnName, text: string): { edit: Edit } | { sentence: string } {
  switch (column) {
    case 'name':
      if (text === '') return { sentence: 'A dimension needs a name: write one, or press Escape.' }
      return { edit: { do: 'rename-dimension', name, to: text } }
    case 'label':
      if (text === '') return { sentence: 'Say what this is in a few words, or press Escape.' }
      return { edit: { do: 'change-dimension', name, set: { label: text } } }
    case 'count': {
      const count = /^\d{1,6}$/.test(text) ? Number(text) : 0
      if (count < 1) return { sentence: 'How many alike is a whole number from 1 up.' }
      return { edit: { do: 'change-dimension', name, set: { count } } }
    }
    default:
      return { sentence: 'This is worked out from the evidence: change that on the card of the dimension.' }
  }
}
