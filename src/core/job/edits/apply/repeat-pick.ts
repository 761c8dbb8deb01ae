import type { Pixel } from '../../../geometry/frames.ts'
import { reason } from '../../../words/core-words.ts'
import { pixelsProblem } from '../../checks/check-mark-pixels.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Mark, RepeatedBy } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { EditOf } from './applied.ts'
import { placeIn } from './apply-list-edit.ts'
import type { WorkingCopy } from './working-copy.ts'

type Repeat = EditOf<'repeat-pick'>

/** Adds one more independent pick to a mark. @throws JobError when it is no whole pick of a mark of that kind */
export function repeatPick({ lists }: WorkingCopy, edit: Repeat): Edit {
  const at = placeIn(lists.mark, edit.mark, 'mark')
  const mark = lists.mark.at(at)
  const before = { repeats: mark.repeats, repeatedBy: mark.repeatedBy }
  lists.mark.replace(at, { ...mark, ...withRepeat(mark, edit), ...signed(mark, edit) } as Mark)
  return backTo(before, mark.id)
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
