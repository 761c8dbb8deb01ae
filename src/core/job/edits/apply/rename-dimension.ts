import { renameInFormula, standsIn } from '../../../formula/rename-in-formula.ts'
import { reason } from '../../../words/core-words.ts'
import { MENTIONS } from '../../lookup/mentions.ts'
import { ITEM_KINDS, ITEM_WORDS, nameOf } from '../../model/item-kinds.ts'
import type { ItemKind } from '../../model/meaning.ts'
import { jobSchema } from '../../model/schema.ts'
import type { Note } from '../../model/types.ts'
import { walkMeanings } from '../../model/walk-meanings.ts'
import { JobError } from '../../text/job-error.ts'
import type { WorkingCopy } from './working-copy.ts'
import type { WorkingList } from './working-list.ts'

const FORMULAS = walkMeanings(jobSchema, 'formula')

/** Refuses a name that formulas mean something else by. */
function mustBeFree(copy: WorkingCopy, name: string): void {
  const named = ITEM_WORDS.some((kind) => copy.lists[kind].naming('in a formula', name).length > 0)
  if (!named) return
  FORMULAS.each(copy.job(), (text, _, { path, holders }) => {
    if (!standsIn(text, name)) return
    const dimension = path[0] === 'dimensions' ? (holders[1] as { name: string }).name : null
    throw new JobError(reason('edit.name-means-something', { name, dimension }))
  })
}

/** An item with another name of a dimension wherever it names that dimension; the item itself where it does not. */
const withOther = (kind: ItemKind, item: object, from: string, to: string): object =>
  MENTIONS[kind].map(item, (text, meaning) => {
    if (meaning.is === 'formula') return standsIn(text, from) ? renameInFormula(text, from, to) : text
    const names = meaning.is === 'subject' || meaning.to === 'dimension'
    return names && text === from ? to : text
  })

/** Puts another name of a dimension into all that names it. */
function renameWhereNamed({ lists }: WorkingCopy, from: string, to: string): void {
  for (const kind of ITEM_WORDS) {
    const list: WorkingList<object> = lists[kind]
    const naming = (['dimension', 'in a formula', 'subject'] as const).flatMap((as) => list.naming(as, from))
    for (const item of new Set(naming)) {
      const renamed = withOther(kind, item, from, to)
      if (renamed !== item) list.replace(list.placeOf(nameOf(item, ITEM_KINDS[kind].key)), renamed)
    }
  }
}

/**
 * Renames a dimension, in formulas, relations and what notes are about as well, and gives the notes that were about
 * the new name already.
 *
 * @throws JobError when there is no such dimension, or the new name is in use
 */
export function renameDimension(copy: WorkingCopy, from: string, to: string): readonly Note[] {
  const { dimension: dimensions, note: notes } = copy.lists
  if (!dimensions.has(from)) throw new JobError(reason('edit.no-such-dimension', { name: from }))
  if (from === to) return []
  if (dimensions.has(to)) throw new JobError(reason('edit.name-taken', { name: to }))
  mustBeFree(copy, to)
  const already = notes.naming('subject', to)
  renameWhereNamed(copy, from, to)
  const at = dimensions.placeOf(from)
  dimensions.replace(at, { ...dimensions.at(at), name: to })
  return already
}
