import type { Edit } from '../model/edit-schema.ts'

/** The edit that an undo or redo is about: its number and its name. */
export interface Named {
  n: number
  name: string
}

/** One edit in the history of a job. */
export interface HistoryLine {
  /** Running number over the whole life of the job. */
  n: number
  /** When, ISO 8601. */
  at: string
  /** Who: the id of a person of the job, or a name. */
  by: string
  edit: Edit
  /** Takes the edit back: it holds what was there before. */
  back: Edit
  /** This edit takes that one back. */
  undoes?: Named
  /** This edit makes that one again. */
  redoes?: Named
}
