import type { Edit } from '../../../core/job/edits/edit.ts'
import type { HistoryLine } from '../../../core/job/history/history-line.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import type { Tip } from './history/kept-line.ts'
import type { Stacks } from './history/undo-stacks.ts'

/** What a session holds at one moment. */
export interface SessionState {
  job: Job
  /** What can be undone and made again next. */
  stacks: Stacks
  scans: SheetScan[]
  /** The last line of the history, which the next one follows. */
  tip: Tip
}

/**
 * What may be asked of a session: an edit, as `readEdit` gives it, or a step back or forth. Exactly that edit is what the
 * history gives back when it is replayed.
 */
export type EditRequest = { kind: 'edit'; edit: Edit } | StepRequest

/** theirs: also where somebody else made that edit. */
export interface StepRequest {
  kind: 'undo' | 'redo'
  theirs?: boolean
}

/** What a request comes to: its line and the text of it, its name, and what the session holds after it. */
export interface Transition {
  line: HistoryLine
  text: string
  name: string
  next: SessionState
}
