import type { CheckContext } from './check-context.ts'
import { checkBy, checkSheet } from './check-marks.ts'

/** Checks every note: its sheet, and who wrote it. */
export function checkNotes(context: CheckContext): void {
  context.job.notes.forEach((note, i) => {
    checkSheet(context, ['notes', i], note.sheet)
    checkBy(context, ['notes', i], note.by)
  })
}
