import { personOf } from '../../../job/edits/edit.ts'
import type { Mint } from '../../../job/ids/mint-ids.ts'
import type { Job } from '../../../job/model/types.ts'
import { type NoteEdits, noteEdits } from './note-edits.ts'
import { parseAnnotations } from './parse-annotations.ts'
import { readAnnotation } from './read-annotation.ts'

/** Notes that were read from annotations, as edits that add them, and what was left out or is to be known. */
export interface FromWebAnnotations extends NoteEdits {
  /** Pictures that annotations are about and no sheet of the job is of, by what they are called there. */
  elsewhere: string[]
}

interface Options {
  /** Who is named for annotations without a creator: the id or name of a person. */
  by?: string
  /** The id of the sheet for annotations on pictures that no sheet is of; without it they are left out. */
  sheet?: string
  /**
   * Gives ids to the notes and people that are new, as `mintIds` does; a note keeps the id that it had only where that
   * was given so, too. Without it they go by numbers, which another copy of the job gives as well.
   */
  mint?: Mint
}

/**
 * Reads W3C Web Annotations (a collection, a page, a list or one) as notes of a job. Each target is matched to a sheet
 * by the SHA-256 of its scan and its page. Notes that are in the job already, word for word, are passed over; what
 * came from this workbench comes back as it was.
 * Source: Web Annotation Data Model (W3C Recommendation 23 February 2017).
 * @throws AnnotationError when the text holds no annotations
 */
export function fromWebAnnotations(text: string, job: Job, options: Options = {}): FromWebAnnotations {
  const { annotations, remarks } = parseAnnotations(text)
  const other = job.sheets.find(({ id }) => id === options.sheet)
  const by = options.by === undefined ? undefined : personOf(job, options.by)?.id
  const findings = annotations.flatMap((annotation) => readAnnotation(annotation, job.sheets, other))
  const elsewhere = findings.flatMap((finding) => finding.elsewhere ?? [])
  return {
    ...noteEdits(job, [{ remarks }, ...findings], by, options.mint),
    elsewhere: [...new Set(elsewhere)],
  }
}
