import type { Edit } from '../edits/edit.ts'
import type { Job } from '../model/types.ts'
import { freshIds } from './fresh-id.ts'
import type { PickedMark } from './picked-mark.ts'

/** Edits that add to a sheet the marks that are new, and the ids of all marks in the order that they were picked. */
export function addMarks(
  job: Job,
  sheet: string,
  marks: readonly PickedMark[],
): { edits: Edit[]; ids: string[] } {
  const fresh = freshIds(
    'M',
    job.marks.map(({ id }) => id),
  )
  const edits: Edit[] = []
  const ids = marks.map((mark) => {
    if (typeof mark === 'string') return mark
    const id = fresh()
    edits.push({ do: 'add-mark', item: { id, sheet, ...mark } })
    return id
  })
  return { edits, ids }
}
