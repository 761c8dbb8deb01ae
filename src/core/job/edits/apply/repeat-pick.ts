import type { Pixel } from '../../../geometry/frames.ts'
import { reason } from '../../../words/core-words.ts'
import { pixelsProblem } from '../../checks/check-mark-pixels.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Job, Mark, RepeatedBy } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { Applied, EditOf } from './applied.ts'
import { indexIn } from './apply-list-edit.ts'
import { replaced } from './list-with.ts'

type Repeat = EditOf<'repeat-pick'>

/** Adds one more independent pick to a mark. @throws JobError when it is no whole pick of a mark of that kind */
export function repeatPick(job: Job, edit: Repeat): Applied {
  const at = indexIn(job.marks, edit.mark, { word: 'mark', key: 'id' })
  const mark = job.marks[at] as Mark
  const before = { repeats: mark.repeats, repeatedBy: mark.repeatedBy }
  const after = { ...mark, ...withRepeat(mark, edit), ...signed(mark, edit) } as Mark
  return { job: { ...job, marks: replaced(job.marks, at, after) }, inverse: backTo(before, mark.id) }
}

function withRepeat(mark: Mark, { pixel, pixels }: Repeat): { repeats: Pixel[] | Pixel[][] } {
  const of = { mark: mark.id, kind: mark.kind }
  if (mark.kind === 'point') {
    if (pixel === undefined || pixels !== undefined) {
      throw new JobError(reason('edit.repeat-is-one-pixel', of))
    }
    return { repeats: [...(mark.repeats ?? []), pixel] }
  }
  if (pixels === undefined || pixel !== undefined) {
    throw new JobError(reason('edit.repeat-is-pixels', of))
  }
  const problem = pixelsProblem(mark, pixels)
  if (problem !== null) {
    throw new JobError(reason('edit.not-picked-again', { mark: mark.id, problem }))
  }
  if (mark.kind === 'path' && pixels.length !== mark.pixels.length) {
    throw new JobError(
      reason('edit.other-corners', {
        mark: mark.id,
        picked: mark.pixels.length,
        given: pixels.length,
      }),
    )
  }
  return { repeats: [...(mark.repeats ?? []), pixels] }
}

/** Who picked each time and when, where anybody says so; those before who did not say it have an empty place. */
function signed(mark: Mark, { by, at }: Repeat): { repeatedBy?: RepeatedBy[] } {
  if (by === undefined && at === undefined && mark.repeatedBy === undefined) return {}
  const before = Array.from({ length: mark.repeats?.length ?? 0 }, (_, i) => mark.repeatedBy?.[i] ?? {})
  return {
    repeatedBy: [...before, { ...(by === undefined ? {} : { by }), ...(at === undefined ? {} : { at }) }],
  }
}

function backTo(before: Record<string, unknown>, id: string): Edit {
  const set = Object.fromEntries(Object.entries(before).filter(([, value]) => value !== undefined))
  const clear = Object.keys(before).filter((key) => before[key] === undefined)
  return {
    do: 'change-mark',
    id,
    ...(Object.keys(set).length === 0 ? {} : { set }),
    ...(clear.length === 0 ? {} : { clear }),
  }
}
