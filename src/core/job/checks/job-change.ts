import type { ItemChange } from '../lookup/list-index.ts'
import type { ItemOf } from '../model/item-kinds.ts'
import type { ItemKind } from '../model/meaning.ts'
import type { Job } from '../model/types.ts'
import type { NamedItems } from './check-context.ts'

/** What became of one item of a job: of a dimension that is renamed, one is gone and one is new. */
export type ChangeOfItem = { [K in ItemKind]: ItemChange<ItemOf<K>> & { readonly kind: K } }[ItemKind]

/** What an edit has made of a job. */
export interface JobChange {
  /** A sound job. What stood in a list of it tells its index: the list itself may have been changed in place. */
  readonly before: Job
  readonly after: Job
  /** The items of the job after. */
  readonly items: NamedItems
  readonly changes: readonly ChangeOfItem[]
}
