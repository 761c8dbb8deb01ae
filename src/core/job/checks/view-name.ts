import { type CoreReason, reason } from '../../words/core-words.ts'
import { inOneCase } from '../ids/thing-called.ts'
import type { Job } from '../model/types.ts'

/**
 * Why a view can't be called so: another one on its sheet is, whatever the case. Null when it can. Jobs may hold such
 * views from before, so it is said of what a person does now only.
 * @param but the id of the view itself, where it is there
 */
export function problemOfViewName(job: Job, sheet: string, name: string, but?: string): CoreReason | null {
  const wanted = inOneCase(name.trim())
  const isTaken = job.views.some(
    (view) => view.sheet === sheet && view.id !== but && inOneCase(view.name.trim()) === wanted,
  )
  return isTaken && wanted !== '' ? reason('edit.view-name-taken', { name: name.trim() }) : null
}
