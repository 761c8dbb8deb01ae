import type { Edit } from '../../../core/job/edits/edit.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { SheetScan } from '../scans/kept/verify-scans.ts'
import type { History } from './history.ts'
import type { JournalLine } from './journal-line.ts'

/** What a session holds at one moment. */
export interface SessionState {
  job: Job
  history: History
  scans: SheetScan[]
}

/**
 * What may be asked of a session: an edit, as `readEdit` gives it, or a step back or forth. Exactly that edit is what the
 * journal gives back when it is replayed.
 */
export type EditRequest = { kind: 'edit'; edit: Edit } | { kind: 'undo' } | { kind: 'redo' }

/** What a request comes to: its journal line, its name, and what the session holds after it. */
export interface Transition {
  line: JournalLine
  name: string
  next: SessionState
}
