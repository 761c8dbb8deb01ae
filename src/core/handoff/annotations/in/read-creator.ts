import { iriOf, isLoose, listOf, textOf } from './json-ld.ts'

/**
 * What the first creator of an annotation is called: a name, and the short one where there is one.
 * Source: Web Annotation Data Model, section 3.3.2.
 */
export function readCreator(creator: unknown): { name: string; short?: string } | null {
  const [first] = listOf(creator)
  if (typeof first === 'string') return first.trim() === '' ? null : { name: first.trim() }
  if (!isLoose(first)) return null
  const short = textOf(first['nickname'])?.trim()
  const name =
    textOf(first['name'])?.trim() || short || textOf(first['email'])?.replace(/^mailto:/, '') || iriOf(first)
  if (name === undefined || name === '') return null
  return { name, ...(short ? { short } : {}) }
}
