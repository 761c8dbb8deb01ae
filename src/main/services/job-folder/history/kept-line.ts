import type { HistoryLine } from '../../../../core/job/history/history-line.ts'

/** Where a line stands in history.ndjson: its number, and the byte that it begins at. */
export type LineRef = readonly [n: number, at: number]

/** A whole line and where it ends: whatever comes next follows it. */
export interface Tip {
  n: number
  hash: string
  /** The byte that it begins at. */
  at: number
  /** The byte after its newline. */
  end: number
}

/** How a line of an edit hangs together with those before it. */
export interface Links {
  /** Hash of the line before. */
  previous: string
  /**
   * After an edit, and one made again: what could be undone before it. After an undo: what could be made again before
   * it. So each line is a place in a stack that reaches as far back as the history.
   */
  below: LineRef | null
  /** After an undo: what can be undone next. After a redo: what can be made again next. */
  beside?: LineRef | null
  /** The first of the lines that went to disk with this one, where that is another: none was acknowledged alone. */
  together?: number
}

/** An edit as history.ndjson has it. What it does was not looked at yet: `readEdit` does. */
export type EditLine = Omit<HistoryLine, 'edit' | 'back'> & Links & { edit: unknown; back: unknown }

/** The whole job as it stood when its history began, or began anew. */
export interface BeginLine {
  /** Number of the last edit that is in it. */
  n: number
  at: string
  by: string
  /** Id of the job. */
  job: string
  begin: unknown
  /** SHA-256 of the job.json that it was taken from; null: of none. */
  from: string | null
  /** Hash of the line before; null at the top of the file. */
  previous: string | null
}

export type KeptLine = EditLine | BeginLine

export const isBegin = (line: KeptLine): line is BeginLine => 'begin' in line
