import { reason } from '../../../words/core-words.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Dimension, Job } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { Applied, EditOf } from './applied.ts'
import { indexIn } from './apply-list-edit.ts'
import { editItem } from './edit-item.ts'
import { inserted, replaced, without } from './list-with.ts'
import { renameDimension } from './rename-dimension.ts'

const RULES = { word: 'dimension', key: 'name' } as const

/** The job with one dimension put in place of itself. @throws JobError when there is no such dimension */
export function withDimension(job: Job, name: string, change: (dimension: Dimension) => Dimension): Job {
  const at = indexIn(job.dimensions, name, RULES)
  return { ...job, dimensions: replaced(job.dimensions, at, change(job.dimensions[at] as Dimension)) }
}

/** Adds a dimension; taking it back takes the evidence that came with it too. */
export function addDimension(job: Job, edit: EditOf<'add-dimension'>): Applied {
  const added = editItem(job, {
    kind: 'dimension',
    does: { verb: 'add', item: edit.item, index: edit.index },
  })
  if (edit.item.evidence.length === 0) return added
  return { ...added, inverse: { do: 'remove-dimension', name: edit.item.name, undo: true } }
}

/** Removes a dimension. @throws JobError when it holds evidence and this is no undo */
export function removeDimension(job: Job, edit: EditOf<'remove-dimension'>): Applied {
  const held = job.dimensions.find(({ name }) => name === edit.name)?.evidence ?? []
  if (held.length > 0 && edit.undo !== true) {
    throw new JobError(
      reason('edit.holds-evidence', { dimension: edit.name, evidence: held.map(({ id }) => id) }),
    )
  }
  return editItem(job, { kind: 'dimension', does: { verb: 'remove', name: edit.name } })
}

/** Says which value is adopted, or leaves it to the rules. */
export function adopt(job: Job, edit: EditOf<'adopt'>): Applied {
  let before: string | undefined
  const next = withDimension(job, edit.dimension, ({ adopt: old, ...dimension }) => {
    before = old
    return edit.adopt === undefined ? dimension : { ...dimension, adopt: edit.adopt }
  })
  const inverse: Edit = { do: 'adopt', dimension: edit.dimension }
  return { job: next, inverse: before === undefined ? inverse : { ...inverse, adopt: before } }
}

/** Renames a dimension wherever it is named. */
export function rename(job: Job, edit: EditOf<'rename-dimension'>): Applied {
  const { job: next, already } = renameDimension(job, edit.name, edit.to)
  const back: Edit = { do: 'rename-dimension', name: edit.to, to: edit.name }
  if (already.length === 0) return { job: next, inverse: back }
  // These notes were about the new name before, so renaming back would take them along.
  const mend = already.map(({ id }): Edit => ({ do: 'change-note', id, set: { about: edit.to } }))
  const name = `rename ${edit.to} to ${edit.name}`
  return { job: next, inverse: { do: 'several', name, edits: [back, ...mend] } }
}

/** Puts a dimension elsewhere in the list, which is the order of the table. */
export function moveDimension(job: Job, edit: EditOf<'move-dimension'>): Applied {
  const from = indexIn(job.dimensions, edit.name, RULES)
  const item = job.dimensions[from] as Dimension
  const dimensions = inserted(without(job.dimensions, from), item, edit.index, 'dimension')
  return { job: { ...job, dimensions }, inverse: { do: 'move-dimension', name: edit.name, index: from } }
}
