import type { AskAnswer } from '../../contract/asks.ts'
import type { Edit } from '../../core/job/edit-types.ts'
import { useBench } from './bench-store.ts'
import { takeKept } from './take-in.ts'
import { ask } from './the-host.ts'

/** Makes an edit. True once it is on disk; false when it was refused, and the person has been told why. */
export async function makeEdit(edit: Edit): Promise<boolean> {
  return took(await ask('edit', { edit, by: useBench.getState().person }))
}

export async function undo(): Promise<boolean> {
  return took(await ask('undo', { by: useBench.getState().person }))
}

export async function redo(): Promise<boolean> {
  return took(await ask('redo', { by: useBench.getState().person }))
}

function took(kept: AskAnswer<'edit'> | undefined): boolean {
  if (kept === undefined) return false
  takeKept(kept)
  return true
}
