import type { Edit } from '../core/job/edits/edit.ts'
import type { Job } from '../core/job/model/types.ts'

/** What a window is told of its host and of the job that is open. */
export interface BenchState {
  version: string
  host: 'electron' | 'local'
  /** Who is at work when nobody is named. */
  person: string
  /** Whether the host can show the system's own dialog to choose a job folder. */
  choosesFolders: boolean
  recent: RecentJob[]
  opened: OpenedJob | null
}

/** A job that was open before. Its folder is known to the host alone; the window has an id. */
export interface RecentJob {
  id: string
  title: string
  /** Where it is, in words to show. */
  place: string
  /** ISO 8601. */
  openedAt: string
}

export interface OpenedJob {
  job: Job
  /** Number of the last edit in `job`. */
  n: number
  /** Where the job folder is, in words to show. */
  place: string
  /** True for a copy of the sample job, made to be practised on. */
  sample: boolean
  writable: boolean
  /** A sentence: why nothing can be edited, and who holds the job. */
  readOnlyBecause?: string
  /** What a person should be told about this opening, one sentence each. */
  notices: string[]
  /** How each sheet's scan was found. */
  scans: ScanState[]
  /** When the last edit came to disk, ISO 8601; null when none was made since the job was opened. */
  savedAt: string | null
  undoName?: string
  redoName?: string
}

export interface ScanState {
  sheet: string
  state: 'ok' | 'missing' | 'changed'
  /** What is wrong and what to do; empty when nothing is. */
  sentence: string
}

/** Edits that are on disk now, in order, as the journal has them. */
export interface Kept {
  edits: { n: number; edit: Edit }[]
  /** What was done, e.g. `add view V2`, `undo add view V2`. */
  name: string
  savedAt: string
  undoName?: string
  redoName?: string
  scans: ScanState[]
}
