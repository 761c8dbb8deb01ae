import { describeEdit, type Edit, readEdit } from '../../../../core/job/edits/edit.ts'
import type { Named } from '../../../../core/job/history/history-line.ts'
import type { Job } from '../../../../core/job/model/types.ts'
import { ScantlingError } from '../../../../core/words/scantling-error.ts'
import type { EditLine, LineRef } from './kept-line.ts'

/** An edit that can be undone, or one that can be made again. */
export interface Step {
  /** The line that did it last. */
  ref: LineRef
  /** The edit that it is about: what a person calls it. */
  named: Named
  /** Takes that line back. */
  edit: Edit
  by: string
  at: string
  /** The one that follows when this one is taken. */
  below: LineRef | null
}

/** What can be undone next, and what can be made again next. */
export interface Stacks {
  undo: Step | null
  redo: Step | null
}

/** The same, before the lines were looked up. */
export interface StackRefs {
  undo: LineRef | null
  redo: LineRef | null
}

export const noStacks: Stacks = { undo: null, redo: null }

/** Gives the step of a line, called by a job as it stands when that step is next; null where it can't be read. */
export type LoadStep = (ref: LineRef, job: Job) => Promise<Step | null>

/** What can be undone and made again after a line that is the last. */
export function refsAfter(line: EditLine, self: LineRef): StackRefs {
  if (line.undoes !== undefined) return { undo: line.beside ?? null, redo: self }
  if (line.redoes !== undefined) return { undo: self, redo: line.beside ?? null }
  return { undo: self, redo: null }
}

/**
 * The edit of a line that can be undone or made again; null where the line holds none that can be read.
 * @param job as it stands when that is next, by which the edit is called
 */
export function stepOf(line: EditLine, ref: LineRef, job: Job): Step | null {
  try {
    const back = readEdit(line.back)
    const named = line.undoes ??
      line.redoes ?? { n: line.n, name: describeEdit(readEdit(line.edit), job, back) }
    return { ref, named, edit: back, by: line.by, at: line.at, below: line.below }
  } catch (error) {
    if (error instanceof ScantlingError) return null
    throw error
  }
}

/** The stacks of a job whose tops are known by where they stand. */
export async function loadStacks({ undo, redo }: StackRefs, job: Job, load: LoadStep): Promise<Stacks> {
  return { undo: undo && (await load(undo, job)), redo: redo && (await load(redo, job)) }
}
