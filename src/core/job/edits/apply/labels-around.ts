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
    case 'dismiss-figure':
      return
    default:
      if ('item' in edit) yield [edit.item]
  }
}

/** The labels of what edits may name: what they add themselves, and what a job holds where that is known. */
export const labelsAround = (job: Job | undefined, ...edits: readonly (Edit | undefined)[]): Labels =>
  labelsAmong(function* (kind) {
    for (const edit of edits) if (edit !== undefined) yield* addedBy(edit)
    if (job !== undefined) yield* listsOf(job, kind)
  })
