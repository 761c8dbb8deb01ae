import { AnnotationError } from '../model/annotation-error.ts'
import { isLoose, isOf, type Loose, listOf } from './json-ld.ts'

const NOT_JSON =
  'This file is not JSON, so no annotations could be read from it: choose one that holds Web Annotations (JSON-LD).'
const NONE =
  'This file is JSON, but holds no Web Annotations: nothing was brought in. Choose a file with an annotation, a page or a collection of them.'
const PAGES_ELSEWHERE =
  'This file only says where its annotations are kept, and nothing is fetched from elsewhere: choose the file of its first page.'

/**
 * The annotations in a JSON-LD text: one alone, a list, a page, or a collection with its first page in it.
 * Source: Web Annotation Data Model, sections 3.1, 5.1 and 5.2.
 * @throws AnnotationError when the text is not JSON or has none
 */
export function annotationsIn(text: string): { annotations: Loose[]; remarks: string[] } {
  let parsed: unknown
  try {
    parsed = JSON.parse(text.replace(/^\uFEFF/, ''))
  } catch {
    throw new AnnotationError(NOT_JSON)
  }
  const remarks: string[] = []
  const annotations = listOf(parsed).flatMap((one) => within(one, remarks, 0))
  if (annotations.length === 0) throw new AnnotationError(NONE)
  return { annotations, remarks }
}

/** Pages nested deeper than any sound document has them are not followed. */
const DEEPEST = 8

function within(thing: unknown, remarks: string[], depth: number): Loose[] {
  if (!isLoose(thing) || depth > DEEPEST) return []
  const inside = (value: unknown): Loose[] => listOf(value).flatMap((one) => within(one, remarks, depth + 1))
  if (isOf(thing, 'AnnotationCollection')) {
    const { first, items } = thing as { first?: unknown; items?: unknown }
    if (typeof first === 'string' && items === undefined) throw new AnnotationError(PAGES_ELSEWHERE)
    return inside(first ?? items)
  }
  if (isOf(thing, 'AnnotationPage')) {
    if (thing['next'] !== undefined) {
      remarks.push('Further pages of these annotations are kept in other files: bring those in as well.')
    }
    return inside(thing['items'])
  }
  if (isOf(thing, 'Annotation')) return [thing]
  if (thing['@graph'] !== undefined) return inside(thing['@graph'])
  return []
}
