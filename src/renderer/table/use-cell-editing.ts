import { useEffect, useRef, useState } from 'react'
import type { Job } from '../../core/job/model/types.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import { useBench } from '../bench/bench-store.ts'
import { makeThen } from '../bench/edits.ts'
import { tell } from '../bench/notices.ts'
import { inWords, reason } from '../words/window-words.ts'
import type { CellLeft } from './cell-editor.tsx'
import { changeInPlace, isChangedInPlace, textInPlace } from './change-in-place.ts'
import type { ColumnName } from './columns.ts'

/** The cell that is being changed where it stands. */
export interface Editing {
  /** Of the dimension. */
  name: string
  column: ColumnName
  text: string
  /** What the job has there by now, as it was changed elsewhere; left out where it was not. */
  now?: string
  /** What is written so far, and what the job had when that was begun: it outlives the row, which is another one under another name. */
  writing: { draft: string; seen: string }
  /** What was written was refused; the keyboard is elsewhere by now, and stays there. */
  refused?: boolean
}

/** Where the dimension is that is being changed, and what its cell has by now, while the job goes on elsewhere. */
function useAsItIsNow(editing: Editing | null, set: (editing: Editing | null) => void): Editing | null {
  const job = useBench((bench) => bench.opened?.job)
  /** The job as it was last, to know a row again that was given another name. */
  const before = useRef(job)
  const last = before.current
  useEffect(() => {
    before.current = job
  }, [job])
  const isThere = editing !== null && job !== undefined
  const name = isThere ? nameNow(last ?? job, job, editing.name) : undefined
  const isGone = isThere && name === undefined
  useEffect(() => {
    if (!isGone || editing === null) return
    const { draft, seen } = editing.writing
    if (draft !== seen)
      tell('caution', inWords(reason('written.row-gone', { name: editing.name, text: draft })))
    set(null)
  }, [isGone, editing, set])
  if (!isThere) return editing
  const now = name === undefined ? editing.text : textInPlace(job, name, editing.column)
  const current =
    name === undefined || (name === editing.name && now === (editing.now ?? editing.text))
      ? editing
      : { ...editing, name, now }
  if (current !== editing && editing.refused !== true) set(current)
  return current
}

/** What a dimension is called by now that had a name in the job before; undefined where it is gone. */
function nameNow(before: Job, now: Job, name: string): string | undefined {
  if (now.dimensions.some((one) => one.name === name)) return name
  const at = before.dimensions.findIndex((one) => one.name === name)
  return before.dimensions.length === now.dimensions.length ? now.dimensions[at]?.name : undefined
}

/**
 * Changing one cell at a time where it stands.
 * @param onEnd called when the keyboard goes back to the grid
 * @param onNext called when it goes on from a cell that was kept; true where it goes on in another
 */
export function useCellEditing(onEnd: () => void, onNext: (from: Editing, left: CellLeft) => boolean) {
  const [edited, setEditing] = useState<Editing | null>(null)
  const editing = useAsItIsNow(edited, setEditing)
  const end = () => {
    setEditing(null)
    onEnd()
  }
  /** Makes an edit; what was written for it stands in its cell again when it is refused. */
  const make = async (written: Editing) => {
    const { name, column, text } = written
    const kept = await makeThen((job) => changeInPlace(job, name, column, text))
    if (!kept) setEditing((now) => now ?? written)
  }
  return {
    editing,
    /** Begins on a cell, with what was typed already; false where nothing can be changed. */
    begin(name: string | undefined, column: ColumnName | undefined, typed?: string): boolean {
      const { opened } = useBench.getState()
      if (opened?.writable !== true || name === undefined || column === undefined) return false
      const { job } = opened
      if (!isChangedInPlace(job, name, column)) return false
      const text = textInPlace(job, name, column)
      setEditing({ name, column, text, writing: { draft: typed ?? text, seen: text } })
      return true
    },
    /** Keeps a text, or says why it can't be kept. */
    keep(text: string, left: CellLeft): AnyReason | null {
      const job = useBench.getState().opened?.job
      if (editing === null || job === undefined) return null
      const change = changeInPlace(job, editing.name, editing.column, text)
      if (change !== null && 'refused' in change) return change.refused
      if (left === 'elsewhere') setEditing(null)
      else if (!onNext(editing, left)) end()
      // What is in the job may be about to be replaced by what was put here before.
      if (change !== null || useBench.getState().keeping > 0) {
        const seen = textInPlace(job, editing.name, editing.column)
        void make({ ...editing, text, now: seen, refused: true, writing: { draft: text, seen } })
      }
      return null
    },
    giveUp: end,
  }
}
