import type { Edit } from '../../model/edit-schema.ts'
import { ITEM_KINDS } from '../../model/item-kinds.ts'
import type { Mark } from '../../model/types.ts'
import { fieldAgainstPicks } from '../../picks/picks-of.ts'
import { listed, MIRRORS, withPicks } from '../../picks/with-picks.ts'
import { applyListEdit, type ListEdit, type ListRules, placeIn, whatIsChanged } from './apply-list-edit.ts'
import { changeFields, type FieldChange } from './change-fields.ts'
import type { EditedList } from './edited-list.ts'
import { editOfItem } from './item-edit.ts'

const { schema, key, locked } = ITEM_KINDS.mark
const RULES: ListRules = { word: 'mark', key, schema, locked }
/** Fields that say where a mark was picked, and of what kind its picks are. */
const OF_PICKS: ReadonlySet<string> = new Set(['kind', ...MIRRORS])

/** Edits one of the marks; whatever is added or changed lists its picks afterwards. @throws JobError as `applyListEdit` */
export function editMark(marks: EditedList<Mark>, does: ListEdit<Mark>): Edit {
  const back =
    does.verb === 'change'
      ? changed(marks, does)
      : applyListEdit(marks, does.verb === 'add' ? { ...does, item: listed(does.item) } : does, RULES)
  return editOfItem({ kind: 'mark', does: back }, key)
}

type Change = ListEdit<Mark> & { verb: 'change' }

function changed(marks: EditedList<Mark>, change: Change): Change {
  const at = placeIn(marks, change.name, RULES.word)
  const before = marks.at(at)
  const set = change.set ?? {}
  const named = [...Object.keys(set), ...(change.clear ?? [])]
  const relisted = !('picks' in set) && named.some((field) => OF_PICKS.has(field) || field === 'picks')
  // What is about to be made anew might not suit the new fields.
  const bare = relisted ? without(before, 'picks') : before
  const { item, back } = changeFields(bare, change, whatIsChanged(before, RULES), schema, [key, ...locked])
  const after = 'picks' in set ? mirrored(item, set) : listed(item)
  marks.replace(at, after)
  return { verb: 'change', name: change.name, ...backTo(before, after, back) }
}

/** A mark that was given picks, with the fields that say the same, but for those that were given as well. */
function mirrored(mark: Mark, set: Record<string, unknown>): Mark {
  const { picks } = mark
  if (picks === undefined || fieldAgainstPicks(mark) === null) return listed(mark)
  const given = MIRRORS.filter((field) => field in set)
  return listed({ ...withPicks(mark, picks), ...only(mark, given) } as Mark)
}

/** The change that puts back what was changed, and what followed from it. */
function backTo(before: Mark, after: Mark, back: FieldChange): FieldChange {
  const [old, now] = [before, after] as unknown as Record<string, unknown>[]
  const set = { ...back.set }
  const clear = new Set(back.clear)
  for (const field of [...MIRRORS, 'picks']) {
    if (old?.[field] !== undefined) {
      if (JSON.stringify(old[field]) !== JSON.stringify(now?.[field])) set[field] = old[field]
    } else if (now?.[field] !== undefined) clear.add(field)
  }
  for (const field of Object.keys(set)) clear.delete(field)
  return {
    ...(Object.keys(set).length === 0 ? {} : { set }),
    ...(clear.size === 0 ? {} : { clear: [...clear] }),
  }
}

function without(mark: Mark, field: keyof Mark | 'picks'): Mark {
  const { [field as 'picks']: _, ...rest } = mark
  return rest as Mark
}

function only(mark: Mark, fields: readonly string[]): Partial<Mark> {
  return Object.fromEntries(Object.entries(mark).filter(([field]) => fields.includes(field)))
}
