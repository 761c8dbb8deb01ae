import type { AnnotationReason } from '../../../words/annotations.ts'
import { reason } from '../../../words/core-words.ts'
import { iriOf, isLoose, isOf, type Loose, listOf, textOf } from './json-ld.ts'

/** What the bodies of an annotation say, and what was not kept of them. */
export interface BodyText {
  text: string
  about?: string
  remarks: AnnotationReason[]
}

/** A body as text: its own, or the address of one that is kept elsewhere. */
function textOfBody(body: unknown): { text: string; kept: boolean } | null {
  if (typeof body === 'string') return { text: body, kept: false }
  if (!isLoose(body)) return null
  const value = textOf(body['value'] ?? body['chars'])
  if (value !== undefined) return { text: value, kept: true }
  const iri = iriOf(body['source'] ?? body)
  return iri === undefined ? null : { text: iri, kept: false }
}

const isTag = (body: unknown): boolean =>
  isLoose(body) &&
  listOf(body['purpose']).some((purpose) => purpose === 'tagging' || purpose === 'oa:tagging')

/** Of a choice between bodies the first is meant where nobody chooses. Source: section 3.2.7. */
function chosen(body: unknown, remarks: AnnotationReason[]): unknown {
  if (!isLoose(body) || !isOf(body, 'Choice')) return body
  const [first, ...others] = listOf(body['items'])
  if (others.length > 0) remarks.push(reason('annotation.first-of-choice'))
  return first
}

/**
 * What an annotation says, all as plain text: markup in it stays what it is, characters.
 * Source: Web Annotation Data Model, sections 3.2.4 to 3.2.7.
 */
export function readBodies(annotation: Loose): BodyText {
  const remarks: AnnotationReason[] = []
  if (annotation['body'] === undefined) {
    return { text: textOf(annotation['bodyValue']) ?? '', remarks }
  }
  const texts: string[] = []
  const tags: string[] = []
  for (const body of listOf(annotation['body']).map((one) => chosen(one, remarks))) {
    const read = textOfBody(body)
    if (read === null) {
      remarks.push(reason('annotation.empty-body'))
      continue
    }
    if (isTag(body)) tags.push(read.text)
    else texts.push(read.text)
    if (!read.kept) remarks.push(reason('annotation.body-elsewhere'))
    else if (isLoose(body) && /html|xml/.test(textOf(body['format']) ?? '')) {
      remarks.push(reason('annotation.markup'))
    }
  }
  const [about, ...further] = tags
  if (further.length > 0) texts.push(further.join(', '))
  return { text: texts.join('\n\n'), ...(about === undefined ? {} : { about }), remarks }
}
