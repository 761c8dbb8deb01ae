import {
  type FromWebAnnotations,
  fromWebAnnotations,
} from '../../../core/handoff/annotations/in/from-web-annotations.ts'
import type { Job } from '../../../core/job/model/types.ts'
import type { AnyReason } from '../../../core/words/reason.ts'
import { makeEdit } from '../../bench/edits.ts'
import { mint } from '../../bench/mint.ts'
import { attempted } from '../../words/refusal.ts'
import { reason } from '../../words/window-words.ts'
import { inBatches } from './note-edits.ts'

/** Larger than any file of notes that people write, bytes. */
const MOST = 64 * 1024 ** 2

/** What a file of annotations comes to in a job; or why it can't be read. */
export async function readNotes(
  file: File,
  job: Job,
  sheet?: string,
): Promise<{ done: FromWebAnnotations } | { refused: AnyReason }> {
  if (file.size > MOST) {
    return { refused: reason('intake.notes-too-large', { file: file.name }) }
  }
  const text = await file.text()
  return attempted(() => fromWebAnnotations(text, job, { mint, ...(sheet === undefined ? {} : { sheet }) }))
}

const count = (n: number): string => (n === 1 ? 'one note' : `${n} notes`)

/** Adds the notes that were read; true once all of them are on disk. */
export async function keepNotes({ edits, notes }: FromWebAnnotations): Promise<boolean> {
  for (const edit of inBatches(edits, `bring in ${count(notes.length)}`)) {
    if (!(await makeEdit(edit))) return false
  }
  return true
}
