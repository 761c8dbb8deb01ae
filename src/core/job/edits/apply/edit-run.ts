import { isSeenSound } from '../../checks/seen-sound.ts'
import type { Edit } from '../../model/edit-schema.ts'
import { ITEM_KINDS, ITEM_WORDS } from '../../model/item-kinds.ts'
import type { Job } from '../../model/types.ts'
import { checkEdited } from './apply-edit.ts'
import { makeEdit } from './make-edit.ts'
import { handOnLists, WorkingCopy } from './working-copy.ts'

/** A job with lists of its own, of which nothing is known yet. */
function withOwnLists(job: Job): Job {
  const lists = ITEM_WORDS.map((kind) => [ITEM_KINDS[kind].list, [...job[ITEM_KINDS[kind].list]]])
  return { ...job, ...Object.fromEntries(lists) }
}

/**
 * Edits that are made one after the other on a job that nobody looks at in between, as when a history is replayed: each
 * of its lists is copied once, however many of the edits change it.
 */
export class EditRun {
  #job: Job
  readonly #own = new Set<readonly object[]>()

  /** @param job a sound job; it stays as it is */
  constructor(job: Job) {
    this.#job = job
  }

  /** The job after the edits; its lists change when another is made. */
  get job(): Job {
    return this.#job
  }

  /**
   * Makes one edit more, as `applyEdit` does, and gives the one that takes it back.
   *
   * @throws JobError as `applyEdit`; the run and its job are of no more use then
   */
  make(edit: Edit): Edit {
    const copy = new WorkingCopy(this.#job, this.#own)
    const inverse = makeEdit(copy, edit)
    const change = copy.change()
    if (!isSeenSound(change)) checkEdited(this.#job, edit, withOwnLists(change.after))
    handOnLists(change)
    for (const kind of ITEM_WORDS) {
      const { list } = ITEM_KINDS[kind]
      if (change.after[list] !== this.#job[list]) this.#own.add(change.after[list])
    }
    this.#job = change.after
    return inverse
  }
}
