import { useState } from 'react'
import type { AnyReason } from '../../core/words/reason.ts'
import { useBench } from '../bench/bench-store.ts'
import { makeThen } from '../bench/edits.ts'
import { changeInPlace, textInPlace } from './change-in-place.ts'
import { type ColumnName, EDITABLE } from './columns.ts'

/** The cell that is being changed where it stands. */
export interface Editing {
  /** Of the dimension. */
  name: string
  column: ColumnName
  text: string
  /** What was written was refused; the keyboard is elsewhere by now, and stays there. */
  refused?: boolean
}

/**
 * Changing one cell at a time where it stands.
 * @param onEnd called when the keyboard goes back to the grid
 */
export function useCellEditing(onEnd: () => void) {
  const [editing, setEditing] = useState<Editing | null>(null)
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
    /** Begins on a cell; false where nothing can be changed. */
    begin(name: string | undefined, column: ColumnName | undefined): boolean {
      const { opened } = useBench.getState()
      if (opened?.writable !== true || name === undefined || column === undefined) return false
      const { job } = opened
      if (!EDITABLE.has(column) || !job.dimensions.some((d) => d.name === name)) return false
      setEditing({ name, column, text: textInPlace(job, name, column) })
      return true
    },
    /** Keeps a text, or says why it can't be kept. `byKey`: the keyboard goes back to the grid with it. */
    keep(text: string, byKey: boolean): AnyReason | null {
      const job = useBench.getState().opened?.job
      if (editing === null || job === undefined) return null
      const change = changeInPlace(job, editing.name, editing.column, text)
      if (change !== null && 'refused' in change) return change.refused
      if (byKey) end()
      else setEditing(null)
      // What is in the job may be about to be replaced by what was put here before.
      if (change !== null || useBench.getState().keeping > 0) void make({ ...editing, text, refused: true })
      return null
    },
    giveUp: end,
  }
}
