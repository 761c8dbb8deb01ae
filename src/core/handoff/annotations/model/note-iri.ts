import type { Note, Sheet } from '../../../job/model/types.ts'
import { niUri } from './ni-uri.ts'

/** Where fields of a note that the model has no word for are kept. */
export const NOTE_FIELD = 'scantling:note'

/** An IRI can't carry half of a surrogate pair. */
export const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, '\uFFFD')

/** The IRI of a note that was made here: the scan it is on, which note, and when it was made. */
export function iriOfNote({ scan }: Sheet, { id, at }: Note): string {
  const made = at === undefined ? '' : `&at=${encodeURIComponent(wellFormed(at))}`
  return `${niUri(scan.sha256)}#note=${encodeURIComponent(wellFormed(id))}${made}`
}

/** The id of the note that an IRI was made from; null when it was not made here. */
export function noteOfIri(iri: string): string | null {
  const [, id = ''] = /^ni:[^#]*#note=([^&]+)(?:&|$)/.exec(iri) ?? []
  try {
    return id === '' ? null : decodeURIComponent(id)
  } catch {
    return null
  }
}
