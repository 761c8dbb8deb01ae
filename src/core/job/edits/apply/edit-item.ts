import { ITEM_KINDS } from '../../model/item-kinds.ts'
import type { Job } from '../../model/types.ts'
import type { Applied } from './applied.ts'
import { applyListEdit } from './apply-list-edit.ts'
import { editOfItem, type ItemEdit } from './item-edit.ts'

/** Edits one of the job's own lists. @throws JobError as `applyListEdit` */
export function editItem(job: Job, { kind, does }: ItemEdit): Applied {
  const { list, schema, key, locked } = ITEM_KINDS[kind]
  const after = applyListEdit<object>(job[list], does, { word: kind, key, schema, locked })
  return {
    job: { ...job, [list]: after.list },
    inverse: editOfItem({ kind, does: after.back }, key),
  }
}
