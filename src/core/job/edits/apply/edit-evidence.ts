import { reason } from '../../../words/core-words.ts'
import type { Edit } from '../../model/edit-schema.ts'
import { evidenceSchema } from '../../model/schema.ts'
import type { Evidence } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { EditOf } from './applied.ts'
import { applyListEdit, type ListEdit, type ListRules, placeIn } from './apply-list-edit.ts'
import { fieldChange } from './change-fields.ts'
import { changeDimension } from './edit-dimension.ts'
import { InnerList } from './edited-list.ts'
import { given } from './given.ts'
import type { WorkingCopy } from './working-copy.ts'

const RULES: ListRules = { word: 'evidence', key: 'id', schema: evidenceSchema, locked: ['withdrawn'] }

function evidenceEdit(dimension: string, edit: ListEdit<Evidence>): Edit {
  switch (edit.verb) {
    case 'add':
      return { do: 'add-evidence', dimension, item: edit.item, index: edit.index }
    case 'change':
      return { do: 'change-evidence', dimension, id: edit.name, ...fieldChange(edit) } as Edit
    case 'remove':
      return { do: 'remove-evidence', dimension, id: edit.name, undo: true }
  }
}

/** Edits the evidence of one dimension. */
export function editEvidence(copy: WorkingCopy, name: string, edit: ListEdit<Evidence>): Edit {
  let back: ListEdit<Evidence> = edit
  changeDimension(copy, name, (dimension) => {
    const evidence = new InnerList(dimension.evidence, 'id')
    back = applyListEdit(evidence, edit, RULES)
    return { ...dimension, evidence: evidence.items }
  })
  return evidenceEdit(name, back)
}

type Withdrawal = Pick<Evidence, 'withdrawn' | 'withdrawnBy' | 'withdrawnAt'>

/** The edit that gives evidence back what was said of its withdrawal. */
function withdrawnAs(target: { dimension: string; id: string }, before: Withdrawal): Edit {
  const { withdrawn: why, withdrawnBy: by, withdrawnAt: at } = before
  if (why !== undefined) return { do: 'withdraw-evidence', ...target, why, ...given({ by, at }) }
  const reinstated: Edit = { do: 'reinstate-evidence', ...target }
  const signed = given({ withdrawnBy: by, withdrawnAt: at })
  if (Object.keys(signed).length === 0) return reinstated
  const signedAgain: Edit = { do: 'change-evidence', ...target, set: signed }
  const name = `reinstate evidence ${target.id} of ${target.dimension}`
  return { do: 'several', name, edits: [reinstated, signedAgain] }
}

/** Says why a piece of evidence no longer counts, by whom and when; without a reason: that it counts again. */
function withWithdrawal(
  copy: WorkingCopy,
  target: { dimension: string; id: string },
  after: Withdrawal,
): Edit {
  const { dimension: name, id } = target
  let before: Withdrawal = {}
  changeDimension(copy, name, (dimension) => {
    const pieces = new InnerList(dimension.evidence, 'id')
    const at = placeIn(pieces, id, RULES.word)
    const { withdrawn, withdrawnBy, withdrawnAt, ...evidence } = pieces.at(at)
    if (after.withdrawn === undefined && withdrawn === undefined) {
      throw new JobError(reason('edit.not-withdrawn', { id, dimension: name }))
    }
    before = given({ withdrawn, withdrawnBy, withdrawnAt })
    pieces.replace(at, { ...evidence, ...given(after) } as Evidence)
    return { ...dimension, evidence: pieces.items }
  })
  return withdrawnAs(target, before)
}

/** Says that a piece of evidence no longer counts. */
export const withdraw = (
  copy: WorkingCopy,
  { dimension, id, why, by, at }: EditOf<'withdraw-evidence'>,
): Edit => withWithdrawal(copy, { dimension, id }, { withdrawn: why, withdrawnBy: by, withdrawnAt: at })

/** Lets a piece of evidence count again. @throws JobError when it is not withdrawn */
export const reinstate = (copy: WorkingCopy, { dimension, id }: EditOf<'reinstate-evidence'>): Edit =>
  withWithdrawal(copy, { dimension, id }, {})
