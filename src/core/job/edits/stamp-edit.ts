import type { Edit } from '../model/edit-schema.ts'
import type { Job } from '../model/types.ts'

/** Who makes an edit, and when. */
export interface Stamp {
  /** The id of a person of the job; undefined when nobody is to be named. */
  by: string | undefined
  /** ISO 8601 date and time. */
  at: string
}

interface Stamped {
  by?: string
  at?: string
}

function stamped<T extends Stamped>(item: T, { by, at }: Stamp): T {
  if (item.by !== undefined && item.at !== undefined) return item
  return { ...item, by: item.by ?? by, at: item.at ?? at }
}

/** The change to a thing that has no `by` or `at` of its own, with the stamp for what is missing; null: nothing is. */
function missing(
  item: Stamped | undefined,
  change: { set?: Stamped; clear?: string[] },
  stamp: Stamp,
): Stamped | null {
  if (item === undefined) return null
  const lacks = (field: 'by' | 'at'): boolean =>
    item[field] === undefined && change.set?.[field] === undefined && !change.clear?.includes(field)
  const add: Stamped = {}
  if (lacks('by') && stamp.by !== undefined) add.by = stamp.by
  if (lacks('at')) add.at = stamp.at
  return Object.keys(add).length === 0 ? null : add
}

function stampedChange<E extends { set?: object; clear?: string[] }>(
  edit: E,
  item: Stamped | undefined,
  stamp: Stamp,
): E {
  const add = missing(item, edit, stamp)
  return add === null ? edit : { ...edit, set: { ...edit.set, ...add } }
}

/**
 * An edit with who made it and when written into the marks, evidence and notes that it adds, and into those that it
 * changes or repeats and that do not say so yet. What an item says already stays.
 *
 * @param job the job before the edit
 */
export function stampEdit(job: Job, edit: Edit, stamp: Stamp): Edit {
  switch (edit.do) {
    case 'several':
      return { ...edit, edits: edit.edits.map((one) => stampEdit(job, one, stamp)) }
    case 'add-mark':
      return { ...edit, item: stamped(edit.item, stamp) }
    case 'add-evidence':
      return { ...edit, item: stamped(edit.item, stamp) }
    case 'add-note':
      return { ...edit, item: stamped(edit.item, stamp) }
    case 'add-dimension': {
      const evidence = edit.item.evidence.map((one) => stamped(one, stamp))
      return { ...edit, item: { ...edit.item, evidence } }
    }
    case 'change-mark':
    case 'change-note': {
      const items: readonly (Stamped & { id: string })[] = edit.do === 'change-mark' ? job.marks : job.notes
      return stampedChange(
        edit,
        items.find(({ id }) => id === edit.id),
        stamp,
      )
    }
    case 'change-evidence': {
      const dimension = job.dimensions.find(({ name }) => name === edit.dimension)
      return stampedChange(
        edit,
        dimension?.evidence.find(({ id }) => id === edit.id),
        stamp,
      )
    }
    case 'repeat-pick': {
      const mark = job.marks.find(({ id }) => id === edit.mark)
      const add = missing(mark, {}, stamp)
      const again = stamped(edit, stamp)
      if (add === null) return again
      const change: Edit = { do: 'change-mark', id: edit.mark, set: add }
      return { do: 'several', name: `pick mark ${edit.mark} again`, edits: [again, change] }
    }
    default:
      return edit
  }
}
