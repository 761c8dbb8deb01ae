import { called } from '../ids/label.ts'
import type { Edit } from '../model/edit-schema.ts'
import { MADE_BY } from '../model/signature-fields.ts'
import type { Dimension, Evidence, Job, View } from '../model/types.ts'
import type { Stamp } from './stamp.ts'
import { signedMove, stampedPick } from './stamp-pick.ts'

interface Stamped {
  by?: string
  at?: string
}

/** What also says who changed it last. */
interface Changed extends Stamped {
  changedBy?: string
  changedAt?: string
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
 * A change to a thing that says who entered it, with who makes the change and when beside that: what it says now is no
 * longer theirs alone. The change itself where it says so already, or only who did something is changed.
 */
function signedChange<E extends { set?: object; clear?: string[] }>(
  edit: E,
  item: Changed | undefined,
  { by, at }: Stamp,
): E {
  const touched = [...Object.keys(edit.set ?? {}), ...(edit.clear ?? [])]
  const said = touched.some((field) => field === 'changedBy' || field === 'changedAt')
  if (item === undefined || said || touched.every((field) => MADE_BY.has(field))) return edit
  if (item.by === undefined && item.at === undefined) return edit
  const gone = by === undefined && item.changedBy !== undefined ? ['changedBy'] : []
  return {
    ...edit,
    set: { ...edit.set, ...(by === undefined ? {} : { changedBy: by }), changedAt: at },
    ...(gone.length === 0 ? {} : { clear: [...(edit.clear ?? []), ...gone] }),
  }
}

const stampedItem = <E extends { item: Stamped }>(edit: E, stamp: Stamp): E => ({
  ...edit,
  item: stamped(edit.item, stamp),
})

function stampedEvidence(evidence: Evidence, stamp: Stamp): Evidence {
  const signed = stamped(evidence, stamp)
  if (signed.withdrawn === undefined) return signed
  const { withdrawnBy = stamp.by, withdrawnAt = stamp.at } = signed
  return { ...signed, withdrawnBy, withdrawnAt }
}

function stampedDimension(dimension: Dimension, stamp: Stamp): Dimension {
  const evidence = dimension.evidence.map((one) => stampedEvidence(one, stamp))
  const signed = { ...stamped(dimension, stamp), evidence }
  if (signed.adopt === undefined) return signed
  const { adoptedBy = stamp.by, adoptedAt = stamp.at } = signed
  return { ...signed, adoptedBy, adoptedAt }
}

function stampedView(view: View, stamp: Stamp): View {
  return { ...stamped(view, stamp), references: view.references.map((one) => stamped(one, stamp)) }
}

/**
 * An edit with who made it and when written into all that it adds, adopts or withdraws, and into the marks, evidence
 * and notes that it changes or repeats and that do not say so yet; into marks also in which sitting. What is said already
 * stays, but for a mark that is put somewhere else: that is a pick of whoever does it. Notes, evidence, figured sizes, views
 * and sheets that say who entered them also get who changed them last.
 *
 * @param job the job before the edit
 */
export function stampEdit(job: Job, edit: Edit, stamp: Stamp): Edit {
  switch (edit.do) {
    case 'several':
      return { ...edit, edits: edit.edits.map((one) => stampEdit(job, one, stamp)) }
    case 'add-person':
    case 'add-instrument':
    case 'add-sheet':
    case 'add-reference':
    case 'add-relation':
    case 'add-note':
    case 'dismiss-figure':
      return stampedItem(edit, stamp)
    case 'add-mark':
      return { ...edit, item: stampedPick(edit.item, stamp) }
    case 'add-view':
      return { ...edit, item: stampedView(edit.item, stamp) }
    case 'add-dimension':
      return { ...edit, item: stampedDimension(edit.item, stamp) }
    case 'add-evidence':
      return { ...edit, item: stampedEvidence(edit.item, stamp) }
    case 'withdraw-evidence':
      return stamped(edit, stamp)
    case 'adopt':
      return edit.adopt === undefined ? edit : stamped(edit, stamp)
    case 'change-mark': {
      const mark = job.marks.find(({ id }) => id === edit.id)
      return stampedChange(signedMove(edit, mark, stamp), mark, stamp)
    }
    case 'change-note': {
      const note = job.notes.find(({ id }) => id === edit.id)
      return stampedChange(signedChange(edit, note, stamp), note, stamp)
    }
    case 'change-sheet': {
      const sheet = job.sheets.find(({ id }) => id === edit.id)
      return signedChange(edit, sheet, stamp)
    }
    case 'change-view': {
      const view = job.views.find(({ id }) => id === edit.id)
      return signedChange(edit, view, stamp)
    }
    case 'change-reference': {
      const view = job.views.find(({ id }) => id === edit.view)
      const size = view?.references.find(({ id }) => id === edit.id)
      return signedChange(edit, size, stamp)
    }
    case 'change-evidence': {
      const dimension = job.dimensions.find(({ name }) => name === edit.dimension)
      const evidence = dimension?.evidence.find(({ id }) => id === edit.id)
      return stampedChange(signedChange(edit, evidence, stamp), evidence, stamp)
    }
    case 'repeat-pick': {
      const mark = job.marks.find(({ id }) => id === edit.mark)
      const add = missing(mark, {}, stamp)
      const again = stampedPick(edit, stamp)
      if (add === null) return again
      const change: Edit = { do: 'change-mark', id: edit.mark, set: add }
      return {
        do: 'several',
        name: `pick ${called('mark', mark ?? { id: edit.mark })} again`,
        edits: [again, change],
      }
    }
    default:
      return edit
  }
}
