import { ITEM_KINDS, ITEM_WORDS, type ItemOf, type ListName } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'
import { type ItemChange, ListIndex } from './list-index.ts'
import type { NamedAs } from './mentions.ts'

/** A list that was made from another by changing some of its items. */
interface MadeFrom {
  readonly list: readonly object[]
  readonly changes: readonly ItemChange[]
}

const INDEXES = new WeakMap<readonly object[], ListIndex>()
const MADE_FROM = new WeakMap<readonly object[], MadeFrom>()

/** The index of the list that this one was made from, following it to this one; undefined where there is none. */
function inherited(list: readonly object[], kind: ItemKind): ListIndex | undefined {
  const made = MADE_FROM.get(list)
  MADE_FROM.delete(list)
  const index = made && INDEXES.get(made.list)
  if (made === undefined || index?.kind !== kind) return undefined
  INDEXES.delete(made.list)
  index.follow(made.changes)
  return index
}

/**
 * The index of one of the lists of a sound job. It is worked out once and then goes from each list to the one that is
 * made from it, when that one is first asked about; a list that has lost its index so gets another.
 */
export function indexOf<K extends ItemKind>(job: Pick<Job, ListName>, kind: K): ListIndex<ItemOf<K>> {
  const list: readonly object[] = job[ITEM_KINDS[kind].list]
  let index = INDEXES.get(list)
  if (index?.kind !== kind) {
    index = inherited(list, kind) ?? new ListIndex(kind, list)
    INDEXES.set(list, index)
  }
  // What an index of a kind holds are the items of that kind.
  return index as unknown as ListIndex<ItemOf<K>>
}

/** Says of a list of a sound job how it was made from another, so that it can have that one's index. */
export function handOn(from: readonly object[], to: readonly object[], changes: readonly ItemChange[]): void {
  MADE_FROM.set(to, { list: from, changes })
}

/** An item of a job, and of which kind it is. */
export type ItemOfKind = { [K in ItemKind]: { readonly kind: K; readonly item: ItemOf<K> } }[ItemKind]

/** The items of a job that name something, list by list. */
export function* holdersOf(job: Pick<Job, ListName>, as: NamedAs, name: string): Generator<ItemOfKind> {
  for (const kind of ITEM_WORDS) {
    for (const item of indexOf(job, kind).holders.of(as, name)) yield { kind, item } as ItemOfKind
  }
}

/** Whether any item of a job names something. */
export const isNamed = (job: Pick<Job, ListName>, as: NamedAs, name: string): boolean =>
  holdersOf(job, as, name).next().done !== true
