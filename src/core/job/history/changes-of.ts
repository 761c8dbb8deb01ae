import { type Edit, itemEditOf } from '../edits/edit.ts'
import { ITEM_KINDS } from '../model/item-kinds.ts'
import { SIGNATURE } from '../model/signature-fields.ts'
import type { MarkPick } from '../model/types.ts'
import { mirrorsOf } from '../picks/with-picks.ts'
import type { Change, Thing, Verb } from './change.ts'
import { changedFields, type Fields } from './changed-fields.ts'
import type { HistoryLine } from './history-line.ts'

/** What is within an item and a thing of its own: evidence of a dimension, references of a view. */
const WITHIN = { evidence: 'evidence', references: 'reference' } as const

const isWithin = (field: string): field is keyof typeof WITHIN => Object.hasOwn(WITHIN, field)

const setBy = (edit: Edit | undefined): Fields => ({ ...(edit as { set?: object } | undefined)?.set })

/** A mark's picks say again what its other fields say, and these are told. */
const saysAgain = ({ kind }: Thing, field: string): boolean => kind === 'mark' && field === 'picks'

/** What an edit sets, its picks as the fields that they change. */
function spelledOut({ picks, ...set }: Fields, back: Edit | undefined): Fields {
  if (!Array.isArray(picks)) return set
  const { set: before = {}, clear = [] } = { ...(back as { set?: Fields; clear?: string[] } | undefined) }
  const changed = new Set([...Object.keys(before), ...clear])
  const said = Object.entries(mirrorsOf(picks as MarkPick[])).filter(([field]) => changed.has(field))
  return { ...Object.fromEntries(said), ...set }
}

/** An item that comes or goes, and what is within it. */
export function cameOrWent(thing: Thing, item: object, verb: 'added' | 'removed'): Change[] {
  const fields: Record<string, unknown> = {}
  const within: Change[] = []
  for (const [field, value] of Object.entries(item)) {
    if (isWithin(field) && Array.isArray(value)) {
      const kind = WITHIN[field]
      for (const one of value)
        within.push(...cameOrWent({ kind, id: String(one.id), of: thing.id }, one, verb))
    } else if (field !== (thing.kind === 'dimension' ? 'name' : 'id') && !saysAgain(thing, field))
      fields[field] = value
  }
  const changed = verb === 'added' ? changedFields({}, fields) : changedFields(fields, {})
  return [{ thing, verb, fields: changed }, ...within]
}

/** The item that an edit adds; of one that removes it, its inverse adds it. */
const itemIn = (edit: Edit | undefined): object => (edit !== undefined && 'item' in edit ? edit.item : {})

/** The fields that say where a mark is. */
const PLACES: ReadonlySet<string> = new Set(['pixel', 'pixels'])

/** What a change of fields is: a mark is moved where it is as it was and lies elsewhere. */
function verbOf(kind: Thing['kind'], fields: Change['fields']): Verb {
  const isMoved = fields.some(
    ({ field, before, after }) => PLACES.has(field) && before !== undefined && after !== undefined,
  )
  return kind === 'mark' && isMoved ? 'moved' : 'changed'
}

/** What was written as it was before, where nothing else was: no change is told without what it was about. */
function writtenAgain(found: Change['fields'], before: Fields, after: Fields): Change['fields'] {
  if (found.some(({ field }) => !SIGNATURE.has(field))) return []
  return Object.entries(after)
    .filter(([field, value]) => !SIGNATURE.has(field) && value !== undefined && Object.hasOwn(before, field))
    .map(([field, value]) => ({ field, before: before[field], after: value }))
}

/** Of the fields that a change names; what followed from it by itself stands in its inverse only, and is not told. */
function changed(thing: Thing, edit: Edit, back: Edit | undefined): Change[] {
  const set = setBy(edit)
  const ofPicks = thing.kind === 'mark' && 'picks' in set
  const after = ofPicks ? spelledOut(set, back) : set
  const named = new Set([...Object.keys(after), ...((edit as { clear?: string[] }).clear ?? [])])
  const before = Object.entries(setBy(back)).filter(
    ([field]) => !saysAgain(thing, field) && (named.has(field) || ofPicks),
  )
  const fields = changedFields(Object.fromEntries(before), after)
  const verb = verbOf(thing.kind, fields)
  return [{ thing, verb, fields: [...fields, ...writtenAgain(fields, Object.fromEntries(before), after)] }]
}

type Named<D extends Edit['do']> = Extract<Edit, { do: D }>

/** An edit as it stands in the place of an inverse, where it is of that kind. */
const ofKind = <D extends Edit['do']>(edit: Edit | undefined, does: D): Partial<Named<D>> =>
  edit?.do === does ? (edit as Named<D>) : {}

function adopted(edit: Named<'adopt'>, back: Edit | undefined): Change {
  const said = ({ adopt, by, at }: Partial<Named<'adopt'>>): Fields => ({
    adopt,
    adoptedBy: by,
    adoptedAt: at,
  })
  const fields = changedFields(said(ofKind(back, 'adopt')), said(edit), 'adopt')
  return { thing: { kind: 'dimension', id: edit.dimension }, verb: 'adopted', fields }
}

type Withdrawing = Named<'withdraw-evidence'>

const withdrawn = ({ why, by, at }: Partial<Withdrawing>): Fields => ({
  withdrawn: why,
  withdrawnBy: by,
  withdrawnAt: at,
})

/** What evidence said of its withdrawal before; it may name somebody although it was not withdrawn. */
function withdrawnBefore(back: Edit | undefined): Fields {
  if (back?.do !== 'several') return withdrawn(ofKind(back, 'withdraw-evidence'))
  return setBy(back.edits.find((edit) => edit.do === 'change-evidence'))
}

function withdrawal(edit: Withdrawing | Named<'reinstate-evidence'>, back: Edit | undefined): Change {
  const after = withdrawn(ofKind(edit, 'withdraw-evidence'))
  return {
    thing: { kind: 'evidence', id: edit.id, of: edit.dimension },
    verb: edit.do === 'withdraw-evidence' ? 'withdrawn' : 'reinstated',
    fields: changedFields(withdrawnBefore(back), after, 'withdrawn'),
  }
}

/** The strokes that were dismissed, or are to be looked at again, as the sheet has them among others. */
function dismissal(sheet: string, verb: 'dismissed' | 'recalled', item: object | undefined): Change {
  const fields =
    verb === 'dismissed' ? changedFields({}, { dismissed: item }) : changedFields({ dismissed: item }, {})
  return { thing: { kind: 'sheet', id: sheet }, verb, fields }
}

/** Where a mark was picked last before it was picked again; nothing where its picks were not listed then. */
function placesBefore(back: Edit | undefined): Fields {
  const picks = setBy(back)['picks']
  const last = Array.isArray(picks) ? (picks as MarkPick[]).at(-1) : undefined
  if (last === undefined) return {}
  return 'pixel' in last ? { pixel: last.pixel } : { pixels: last.pixels }
}

/** What an edit that adds, changes or removes did to what it is about. */
function done(thing: Thing, edit: Edit, back: Edit | undefined): Change[] {
  if ('item' in edit) return cameOrWent(thing, edit.item, 'added')
  return edit.do.startsWith('remove-')
    ? cameOrWent(thing, itemIn(back), 'removed')
    : changed(thing, edit, back)
}

const idIn = (edit: { id: string } | { item: { id: string } }): string =>
  'item' in edit ? edit.item.id : edit.id

/** What a plain edit did; `back` is the one that takes it back. */
function changesBy(edit: Exclude<Edit, { do: 'several' }>, back: Edit | undefined): Change[] {
  switch (edit.do) {
    case 'describe':
      return changed({ kind: 'job', id: '' }, edit, back)
    case 'adopt':
      return [adopted(edit, back)]
    case 'withdraw-evidence':
    case 'reinstate-evidence':
      return [withdrawal(edit, back)]
    case 'rename-dimension': {
      const fields = changedFields({ name: edit.name }, { name: edit.to })
      return [{ thing: { kind: 'dimension', id: edit.to }, verb: 'renamed', fields }]
    }
    case 'move-dimension': {
      const { index } = ofKind(back, 'move-dimension')
      const fields = changedFields({ index }, { index: edit.index })
      return [{ thing: { kind: 'dimension', id: edit.name }, verb: 'moved', fields }]
    }
    case 'move-sheet': {
      const { index } = ofKind(back, 'move-sheet')
      const fields = changedFields({ index }, { index: edit.index })
      return [{ thing: { kind: 'sheet', id: edit.id }, verb: 'moved', fields }]
    }
    case 'dismiss-figure':
      return [dismissal(edit.sheet, 'dismissed', edit.item)]
    case 'recall-figure':
      return [dismissal(edit.sheet, 'recalled', ofKind(back, 'dismiss-figure').item)]
    case 'repeat-pick': {
      const { pixel, pixels } = edit
      const thing = { kind: 'mark', id: edit.mark } as const
      const after = { pixel, pixels }
      const where = pixel === undefined ? 'pixels' : 'pixel'
      return [{ thing, verb: 'picked again', fields: changedFields(placesBefore(back), after, where) }]
    }
    case 'add-evidence':
    case 'change-evidence':
    case 'remove-evidence':
      return done({ kind: 'evidence', id: idIn(edit), of: edit.dimension }, edit, back)
    case 'add-reference':
    case 'change-reference':
    case 'remove-reference':
      return done({ kind: 'reference', id: idIn(edit), of: edit.view }, edit, back)
    default: {
      const itemEdit = itemEditOf(edit)
      if (itemEdit === null) return []
      const { kind, does } = itemEdit
      const id = does.verb === 'add' ? String((does.item as Fields)[ITEM_KINDS[kind].key]) : does.name
      return done({ kind, id }, edit, back)
    }
  }
}

/**
 * What a line of a history did, to one thing after the other: what was added, changed, removed and so on, and what each
 * field held before and after. What several edits did as one is told one by one.
 */
export function changesOf({ edit, back }: Pick<HistoryLine, 'edit' | 'back'>): Change[] {
  return changesMade(edit, back)
}

function changesMade(edit: Edit, back: Edit | undefined): Change[] {
  if (edit.do !== 'several') return changesBy(edit, back)
  // What was done last is taken back first.
  const backs = back?.do === 'several' && back.edits.length === edit.edits.length ? back.edits : []
  return edit.edits.flatMap((one, i) => changesMade(one, backs[backs.length - 1 - i]))
}
