import type { Labelled } from '../../ids/label.ts'
import { type Labels, labelsAmong, listsOf } from '../../ids/labels-of-job.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Job } from '../../model/types.ts'

function* addedBy(edit: Edit): Generator<readonly Labelled[]> {
  switch (edit.do) {
    case 'several':
      for (const one of edit.edits) yield* addedBy(one)
      return
    case 'add-dimension':
      yield edit.item.evidence
      return
    case 'add-view':
      yield edit.item.references
      yield [edit.item]
      return
    default:
      if ('item' in edit) yield [edit.item]
  }
}

/** The labels of what an edit may name: what it adds itself, and what the job held before it where that is known. */
export const labelsAround = (edit: Edit, before: Job | undefined): Labels =>
  labelsAmong(function* (kind) {
    yield* addedBy(edit)
    if (before !== undefined) yield* listsOf(before, kind)
  })
