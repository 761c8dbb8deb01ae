import type { Job } from '../../../job/model/types.ts'
import { reason } from '../../../words/core-words.ts'
import { AnnotationError } from '../model/annotation-error.ts'
import { niUri } from '../model/ni-uri.ts'
import { webAnnotationOf } from './web-annotation-of-note.ts'

/** The context that says what the words of the model mean. */
export const CONTEXT = 'http://www.w3.org/ns/anno.jsonld'

/** The media type of what `toWebAnnotations` gives. Source: Web Annotation Protocol, section 3. */
export const ANNOTATION_TYPE = `application/ld+json; profile="${CONTEXT}"`

/**
 * The notes of a job as W3C Web Annotations: JSON-LD text of one AnnotationCollection with one page in it, and a line
 * break at its end.
 * Source: Web Annotation Data Model (W3C Recommendation 23 February 2017), sections 5.1 and 5.2.
 * @throws AnnotationError when the job has no notes, for a page of annotations may not be empty
 */
export function toWebAnnotations(job: Job): string {
  const items = job.notes.flatMap((note) => {
    const sheet = job.sheets.find(({ id }) => id === note.sheet)
    return sheet === undefined ? [] : [webAnnotationOf(job, sheet, note)]
  })
  const first = job.sheets.find(({ id }) => id === job.notes[0]?.sheet)
  if (first === undefined || items.length === 0) {
    throw new AnnotationError(reason('annotation.no-notes'))
  }
  const id = `${niUri(first.scan.sha256)}#notes`
  const page = `${id}-1`
  const collection = {
    '@context': CONTEXT,
    id,
    type: 'AnnotationCollection',
    label: job.title,
    total: items.length,
    first: { id: page, type: 'AnnotationPage', partOf: id, startIndex: 0, items },
    last: page,
  }
  return `${JSON.stringify(collection, null, 2)}\n`
}
