import { reason } from '../../../words/core-words.ts'
import { pixelsProblem } from '../../checks/check-mark-pixels.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { Mark, MarkPick } from '../../model/types.ts'
import { firstPlaces, picksOf } from '../../picks/picks-of.ts'
import { withPicks } from '../../picks/with-picks.ts'
import { JobError } from '../../text/job-error.ts'
import type { EditOf } from './applied.ts'
import { placeIn } from './apply-list-edit.ts'
import type { WorkingCopy } from './working-copy.ts'

type Repeat = EditOf<'repeat-pick'>

/** Adds one more independent pick to a mark. @throws JobError when it is no whole pick of a mark of that kind */
export function repeatPick({ lists }: WorkingCopy, edit: Repeat): Edit {
  const at = placeIn(lists.mark, edit.mark, 'mark')
  const mark = lists.mark.at(at)
  const { repeats, repeatedBy, picks } = mark
  lists.mark.replace(at, withPicks(mark, [...picksOf(mark), pickAgain(mark, edit)]))
  return backTo({ repeats, repeatedBy, picks }, mark.id)
}

function pickAgain(mark: Mark, { pixel, pixels, by, at, sitting, how, sigma }: Repeat): MarkPick {
  const of = { mark: mark.id, kind: mark.kind }
  const made = Object.fromEntries(
    Object.entries({ by, at, sitting, how, sigma }).filter(([, said]) => said !== undefined),
  )
  if (mark.kind === 'point') {
    if (pixel === undefined || pixels !== undefined) {
      throw new JobError(reason('edit.repeat-is-one-pixel', of))
    }
    return { ...made, pixel }
  }
  if (pixels === undefined || pixel !== undefined) {
    throw new JobError(reason('edit.repeat-is-pixels', of))
  }
  const problem = pixelsProblem(mark, pixels)
  if (problem !== null) {
    throw new JobError(reason('edit.not-picked-again', { mark: mark.id, problem }))
  }
  const picked = firstPlaces(mark).length
  if (mark.kind === 'path' && pixels.length !== picked) {
    throw new JobError(reason('edit.other-corners', { mark: mark.id, picked, given: pixels.length }))
  }
  return { ...made, pixels }
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
