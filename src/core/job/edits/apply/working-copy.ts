import type { ChangeOfItem, JobChange } from '../../checks/job-change.ts'
import { handOn, indexOf } from '../../lookup/index-of.ts'
import { ITEM_KINDS, ITEM_WORDS, type ItemOf } from '../../model/item-kinds.ts'
import type { ItemKind } from '../../model/meaning.ts'
import type { Job } from '../../model/types.ts'
import { WorkingList } from './working-list.ts'

type Lists = { readonly [K in ItemKind]: WorkingList<ItemOf<K>> }

/** Lists that nobody has but the one who makes an edit. */
export type OwnLists = ReadonlySet<readonly object[]>

/** A job while an edit is made in it. What the edit does not touch is shared with the job before, which stays as it is. */
export class WorkingCopy {
  readonly before: Job
  readonly lists: Lists
  /** The job as it says of itself now, with the lists that it had before. */
  #described: Job

  /**
   * @param before a sound job
   * @param own those of its lists that can be changed in place
   */
  constructor(before: Job, own: OwnLists = new Set()) {
    this.before = before
    this.#described = before
    const listOf = <K extends ItemKind>(kind: K): WorkingList<ItemOf<K>> => {
      const items: readonly object[] = before[ITEM_KINDS[kind].list]
      return new WorkingList(items as ItemOf<K>[], indexOf(before, kind), own.has(items))
    }
    this.lists = {
      person: listOf('person'),
      instrument: listOf('instrument'),
      sheet: listOf('sheet'),
      view: listOf('view'),
      mark: listOf('mark'),
      dimension: listOf('dimension'),
      relation: listOf('relation'),
      note: listOf('note'),
    }
  }

  /** What the job says of itself now; its lists are those that it had before. */
  get described(): Job {
    return this.#described
  }

  /** Has the job say something else of itself. */
  describe(job: Job): void {
    this.#described = job
  }

  /** The job as it is now; that before the edit, where nothing was changed. */
  job(): Job {
    const edited = ITEM_WORDS.flatMap((kind): [string, readonly object[]][] => {
      const { list } = ITEM_KINDS[kind]
      const { items } = this.lists[kind]
      return items === this.before[list] ? [] : [[list, items]]
    })
    return edited.length === 0 ? this.#described : { ...this.#described, ...Object.fromEntries(edited) }
  }

  /** What the edit has made of the job. */
  change(): JobChange {
    const { before, lists } = this
    const changes = ITEM_WORDS.flatMap((kind) =>
      // Each list has items of its own kind.
      lists[kind].changes().map((change) => ({ kind, ...change }) as ChangeOfItem),
    )
    return { before, after: this.job(), items: lists, changes }
  }
}

/** Lets the lists of a sound job be known by those of the job that it was made from, or by themselves as they were. */
export function handOnLists({ before, after, changes }: JobChange): void {
  for (const kind of ITEM_WORDS) {
    const { list } = ITEM_KINDS[kind]
    const ofKind = changes.filter((change) => change.kind === kind)
    if (after[list] !== before[list]) handOn(before[list], after[list], ofKind)
    else if (ofKind.length > 0) indexOf<ItemKind>(after, kind).follow(ofKind)
  }
}
