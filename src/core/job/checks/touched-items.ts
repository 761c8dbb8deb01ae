import { activeFormulas } from '../../formula/evaluation-order.ts'
import { holdersOf, type ItemOfKind, indexOf } from '../lookup/index-of.ts'
import { eachNamed, type NamedAs } from '../lookup/mentions.ts'
import { ITEM_KINDS, ITEM_WORDS, nameOf } from '../model/item-kinds.ts'
import type { Mark } from '../model/types.ts'
import type { ChangeOfItem, JobChange } from './job-change.ts'

/** The items that name something and that the edit left as they were. */
function* keptHolders({ before, items }: JobChange, as: NamedAs, name: string): Generator<ItemOfKind> {
  for (const holder of holdersOf(before, as, name)) {
    const { key } = ITEM_KINDS[holder.kind]
    if (items[holder.kind].get(nameOf(holder.item, key)) === holder.item) yield holder
  }
}

/** Whether an item has formulas that count; one that only has withdrawn ones may name what is gone. */
const hasFormulas = (holder: ItemOfKind): boolean =>
  holder.kind !== 'dimension' || activeFormulas(holder.item).length > 0

/** Whether anything names an item that is gone, or a formula that changed names a dimension that is. */
function namesWhatIsGone(change: JobChange): boolean {
  const gone = change.changes.filter(({ is }) => is === undefined)
  const dimensions = new Set(gone.filter(({ kind }) => kind === 'dimension').map(({ name }) => name))
  for (const { kind, name } of gone) {
    if (kind === 'person' && change.items.person.size === 0) continue
    for (const _ of keptHolders(change, kind, name)) return true
  }
  for (const name of dimensions) {
    for (const holder of keptHolders(change, 'in a formula', name)) if (hasFormulas(holder)) return true
  }
  let found = false
  if (dimensions.size === 0) return found
  for (const { kind, is } of change.changes) {
    if (is === undefined) continue
    eachNamed(kind, is, (as, name) => {
      found ||= as === 'in a formula' && dimensions.has(name)
    })
  }
  return found
}

/** Whether somebody is named who is not among the people of the job, now that there are any. */
function namesSomebodyUnlisted(change: JobChange): boolean {
  const { before, items } = change
  if (indexOf(before, 'person').size > 0 || items.person.size === 0) return false
  for (const kind of ITEM_WORDS) {
    for (const name of indexOf(before, kind).holders.named('person')) {
      if (items.person.has(name)) continue
      for (const _ of keptHolders(change, 'person', name)) return true
    }
  }
  return false
}

/** Whether what stays names somebody or something that is not there after an edit, as far as is seen at once. */
export const leavesNamesBehind = (change: JobChange): boolean =>
  namesWhatIsGone(change) || namesSomebodyUnlisted(change)

const isClosed = (mark: Mark): boolean => mark.kind === 'path' && mark.closed === true

/** How an item is named by those to whom what became of it matters; undefined where it matters to nobody. */
function mattersToThoseWho(change: ChangeOfItem): NamedAs | undefined {
  if (change.was === undefined || change.is === undefined) return undefined
  switch (change.kind) {
    case 'mark': {
      const { was, is } = change
      const alike = was.kind === is.kind && was.sheet === is.sheet && isClosed(was) === isClosed(is)
      return alike ? undefined : 'mark'
    }
    case 'view':
      return change.was.sheet === change.is.sheet ? undefined : 'view'
    case 'dimension':
      return change.was.kind === change.is.kind ? undefined : 'in a formula'
    default:
      return undefined
  }
}

/** The items that an edit left as they were and that may suit no more what they name. */
export function* touchedItems(change: JobChange): Generator<ItemOfKind> {
  for (const one of change.changes) {
    const as = mattersToThoseWho(one)
    if (as !== undefined) yield* keptHolders(change, as, one.name)
  }
}
