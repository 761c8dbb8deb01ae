import type { Edit } from '../../../core/job/edits/edit.ts'

/** The edit that an undo or redo is about: its number and its name. */
export interface Named {
  n: number
  name: string
}

/** One acknowledged edit in journal.ndjson. */
export interface JournalLine {
  /** Running number over the whole life of the job. */
  n: number
  /** When, ISO 8601. */
  at: string
  /** Who. */
  by: string
  edit: Edit
  /** This edit takes that one back. */
  undoes?: Named
  /** This edit makes that one again. */
  redoes?: Named
}

export const writeJournalLine = (line: JournalLine): string => `${JSON.stringify(line)}\n`
