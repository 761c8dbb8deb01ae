import type { AskAnswer } from '../../contract/asks.ts'
import type { Edit } from '../../core/job/edits/edit.ts'
import { useBench } from './bench-store.ts'
import { takeKept } from './take-in.ts'
import { ask } from './the-host.ts'

/** Who it is by, and the job that it is meant for. */
export function signed(): { by: string; place?: string } {
  const { person, opened } = useBench.getState()
  return { by: person, ...(opened === null ? {} : { place: opened.place }) }
}

/** Makes an edit. True once it is on disk; false when it was refused, and the person has been told why. */
export async function makeEdit(edit: Edit): Promise<boolean> {
  return took(await ask('edit', { edit, ...signed() }))
}

export async function undo(): Promise<boolean> {
  return took(await ask('undo', signed()))
}

export async function redo(): Promise<boolean> {
  return took(await ask('redo', signed()))
}

function took(kept: AskAnswer<'edit'> | undefined): boolean {
  if (kept === undefined) return false
  takeKept(kept)
  return true
}
