import {
  type FromWebAnnotations,
  fromWebAnnotations,
} from '../../../core/handoff/annotations/in/from-web-annotations.ts'
import type { Job } from '../../../core/job/model/types.ts'
import { makeEdit } from '../../bench/edits.ts'
import { refusalOf } from '../../bench/refusal.ts'
import { inBatches } from './note-edits.ts'

/** Larger than any file of notes that people write, bytes. */
const MOST = 64 * 1024 ** 2

/** What a file of annotations comes to in a job; or why it can't be read, in a sentence. */
export async function readNotes(
  file: File,
  job: Job,
  sheet?: string,
): Promise<{ read: FromWebAnnotations } | { problem: string }> {
  if (file.size > MOST) {
    return {
      problem: `${file.name} is larger than any file of notes should be, so it was not read: look whether it is the right one.`,
    }
  }
  const text = await file.text()
  let read: FromWebAnnotations | undefined
  const problem = refusalOf(() => {
    read = fromWebAnnotations(text, job, sheet === undefined ? {} : { sheet })
  })
  return read === undefined ? { problem } : { read }
}

const count = (n: number): string => (n === 1 ? 'one note' : `${n} notes`)

/** Adds the notes that were read; true once all of them are on disk. */
export async function keepNotes({ edits, notes }: FromWebAnnotations): Promise<boolean> {
  for (const edit of inBatches(edits, `bring in ${count(notes.length)}`)) {
    if (!(await makeEdit(edit))) return false
  }
  return true
}
