import type { Edit } from '../../../core/job/edits/edit.ts'

/** What can be undone or made again: the edit that does it, and the name and number of the one it is about. */
export interface HistoryEntry {
  n: number
  name: string
  edit: Edit
}

interface Stack {
  top: HistoryEntry
  below: Stack | null
}

/** Everything done and undone so far; values never change, so a refused write keeps the history it started from. */
export interface History {
  undo: Stack | null
  redo: Stack | null
}

export const emptyHistory: History = { undo: null, redo: null }

/** After a new edit: it can be undone by `inverse`, and what was undone before can no longer be made again. */
export const afterEdit = (history: History, inverse: HistoryEntry): History => ({
  undo: { top: inverse, below: history.undo },
  redo: null,
})

/** After undoing the newest edit: it can be made again by `again`. */
export const afterUndo = (history: History, again: HistoryEntry): History => ({
  undo: history.undo?.below ?? null,
  redo: { top: again, below: history.redo },
})

/** After making the newest undone edit again: it can be undone by `inverse`. */
export const afterRedo = (history: History, inverse: HistoryEntry): History => ({
  undo: { top: inverse, below: history.undo },
  redo: history.redo?.below ?? null,
})
