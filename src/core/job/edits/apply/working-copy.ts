import type { ChangeOfItem, JobChange } from '../../checks/job-change.ts'
import { handOn, indexOf } from '../../lookup/index-of.ts'
import { ITEM_KINDS, ITEM_WORDS, type ItemOf } from '../../model/item-kinds.ts'
import type { ItemKind } from '../../model/meaning.ts'
import type { Job } from '../../model/types.ts'
import { WorkingList } from './working-list.ts'

type Lists = { readonly [K in ItemKind]: WorkingList<ItemOf<K>> }

function listOf<K extends ItemKind>(job: Job, kind: K): WorkingList<ItemOf<K>> {
  const items: readonly object[] = job[ITEM_KINDS[kind].list]
  return new WorkingList(items as ItemOf<K>[], indexOf(job, kind))
}

/** A job while an edit is made in it. What the edit does not touch is shared with the job before, which stays as it is. */
export class WorkingCopy {
  readonly before: Job
  readonly lists: Lists
  /** The job as it says of itself now, with the lists that it had before. */
  #described: Job

  /** @param before a sound job */
  constructor(before: Job) {
    this.before = before
    this.#described = before
    this.lists = {
      person: listOf(before, 'person'),
      instrument: listOf(before, 'instrument'),
      sheet: listOf(before, 'sheet'),
      view: listOf(before, 'view'),
      mark: listOf(before, 'mark'),
      dimension: listOf(before, 'dimension'),
      relation: listOf(before, 'relation'),
      note: listOf(before, 'note'),
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

/** Lets the lists of a sound job be known by those of the job that it was made from. */
export function handOnLists({ before, after, changes }: JobChange): void {
  for (const kind of ITEM_WORDS) {
    const { list } = ITEM_KINDS[kind]
    if (after[list] === before[list]) continue
    handOn(
      before[list],
      after[list],
      changes.filter((change) => change.kind === kind),
    )
  }
}
