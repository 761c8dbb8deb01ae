import type { AnnotationReason } from '../../../words/annotations.ts'
import { reason } from '../../../words/core-words.ts'
import { AnnotationError } from '../model/annotation-error.ts'
import { isLoose, isOf, type Loose, listOf } from './json-ld.ts'

/**
 * The annotations in a JSON-LD text: one alone, a list, a page, or a collection with its first page in it.
 * Source: Web Annotation Data Model, sections 3.1, 5.1 and 5.2.
 * @throws AnnotationError when the text is not JSON or has none
 */
export function parseAnnotations(text: string): { annotations: Loose[]; remarks: AnnotationReason[] } {
  let parsed: unknown
  try {
    parsed = JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch {
    throw new AnnotationError(reason('annotation.not-json'))
  }
  const remarks: AnnotationReason[] = []
  const annotations = listOf(parsed).flatMap((one) => within(one, remarks, 0))
  if (annotations.length === 0) throw new AnnotationError(reason('annotation.none'))
  return { annotations, remarks }
}

/** Pages nested deeper than any sound document has them are not followed. */
const DEEPEST = 8

function within(thing: unknown, remarks: AnnotationReason[], depth: number): Loose[] {
  if (!isLoose(thing) || depth > DEEPEST) return []
  const inside = (value: unknown): Loose[] => listOf(value).flatMap((one) => within(one, remarks, depth + 1))
  if (isOf(thing, 'AnnotationCollection')) {
    const first = thing['first']
    const items = thing['items']
    if (typeof first === 'string' && items === undefined) {
      throw new AnnotationError(reason('annotation.pages-elsewhere'))
    }
    return inside(first ?? items)
  }
  if (isOf(thing, 'AnnotationPage')) {
    if (thing['next'] !== undefined) remarks.push(reason('annotation.further-pages'))
    return inside(thing['items'])
  }
  if (isOf(thing, 'Annotation')) return [thing]
  if (thing['@graph'] !== undefined) return inside(thing['@graph'])
  return []
}
