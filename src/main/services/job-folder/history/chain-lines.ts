import type { HistoryLine } from '../../../../core/job/history/history-line.ts'
import type { EditLine, LineRef, Tip } from './kept-line.ts'
import { writeLine } from './line-text.ts'

/** What a line leaves to be undone and made again, beside the step that it is itself. */
export interface StackLinks {
  below: LineRef | null
  beside?: LineRef | null
}

/** A line as it goes to disk after another one, and where it will stand. */
export function chainLine(
  { n, at, by, edit, back, undoes, redoes }: HistoryLine,
  { below, beside }: StackLinks,
  before: Tip,
  together?: number,
): { text: string; tip: Tip } {
  const line: EditLine = {
    n,
    previous: before.hash,
    at,
    by,
    edit,
    back,
    ...(undoes === undefined ? {} : { undoes }),
    ...(redoes === undefined ? {} : { redoes }),
    below,
    ...(beside === undefined ? {} : { beside }),
    ...(together === undefined || together === n ? {} : { together }),
  }
  const { text, hash } = writeLine(line)
  return { text, tip: { n, hash, at: before.end, end: before.end + Buffer.byteLength(text) } }
}
