import { reason } from '../../../words/core-words.ts'
import type { Edit } from '../../model/edit-schema.ts'
import type { DismissedFigure, Sheet } from '../../model/types.ts'
import { JobError } from '../../text/job-error.ts'
import type { EditOf } from './applied.ts'
import { placeIn } from './apply-list-edit.ts'
import type { WorkingCopy } from './working-copy.ts'

type Box = DismissedFigure['box']

const isSameBox = (a: Box, b: Box): boolean => a.every((side, i) => side === b[i])

/** The same without an empty list, so that what was recalled leaves the sheet as it was. */
function withDismissed({ dismissed: _, ...sheet }: Sheet, dismissed: DismissedFigure[]): Sheet {
  return dismissed.length === 0 ? sheet : { ...sheet, dismissed }
}

/** @throws JobError where those strokes are dismissed already, or the index is beyond the end */
export function dismissFigure({ lists }: WorkingCopy, edit: EditOf<'dismiss-figure'>): Edit {
  const at = placeIn(lists.sheet, edit.sheet, 'sheet')
  const sheet = lists.sheet.at(at)
  const { dismissed = [] } = sheet
  const { item, index = dismissed.length } = edit
  if (dismissed.some(({ box }) => isSameBox(box, item.box))) {
    throw new JobError(reason('edit.dismissed-already'))
  }
  if (index > dismissed.length) {
    const parts = { kind: 'dismissed figure', index, length: dismissed.length }
    throw new JobError(reason('edit.index-beyond-end', parts))
  }
  lists.sheet.replace(at, withDismissed(sheet, dismissed.toSpliced(index, 0, item)))
  return { do: 'recall-figure', sheet: edit.sheet, box: item.box }
}

/** @throws JobError where no such strokes are dismissed */
export function recallFigure({ lists }: WorkingCopy, edit: EditOf<'recall-figure'>): Edit {
  const at = placeIn(lists.sheet, edit.sheet, 'sheet')
  const sheet = lists.sheet.at(at)
  const { dismissed = [] } = sheet
  const index = dismissed.findIndex(({ box }) => isSameBox(box, edit.box))
  const item = dismissed[index]
  if (item === undefined) throw new JobError(reason('edit.not-dismissed'))
  lists.sheet.replace(at, withDismissed(sheet, dismissed.toSpliced(index, 1)))
  return { do: 'dismiss-figure', sheet: edit.sheet, item, index }
}
