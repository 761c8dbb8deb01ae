import type { z } from 'zod'
import { place } from './place.ts'
import { quoted } from './quoted.ts'

type Issue = z.core.$ZodIssue

const EXPECTED: Record<string, string> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object with named fields',
}

function list(values: readonly unknown[]): string {
  const words = values.map((value) => quoted(value))
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
}

function range(issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig): string {
  const small = issue.code === 'too_small'
  const bound = String(small ? issue.minimum : issue.maximum)
  if (issue.origin === 'string') {
    if (small) return bound === '1' ? 'must not be empty' : `must have ${bound} characters or more`
    return `must have ${bound} characters, no more`
  }
  if (issue.origin === 'array') {
    // Lists of any length are only ever asked not to be empty; all other bounds are those of a fixed length.
    if (small && bound === '1') return 'must not be an empty list'
    return bound === '1' ? 'must have a single entry' : `must have ${bound} entries`
  }
  if (issue.inclusive) return `must be a number of ${bound} or ${small ? 'more' : 'less'}`
  return `must be a number ${small ? 'greater' : 'less'} than ${bound}`
}

function words(issue: Issue, value: unknown): string {
  if (value === undefined) return 'is missing'
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${EXPECTED[issue.expected] ?? issue.expected}`
    case 'too_small':
    case 'too_big':
      return range(issue)
    case 'invalid_value':
      return `must be ${list(issue.values)}`
    case 'invalid_union':
      return 'options' in issue && issue.options !== undefined
        ? `must be ${list(issue.options)}`
        : 'has the wrong form'
    case 'unrecognized_keys':
      return `has no field ${list(issue.keys)}`
    default:
      return issue.message
  }
}

function at(whole: unknown, path: readonly PropertyKey[]): unknown {
  let value = whole
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined
    value = (value as Record<PropertyKey, unknown>)[key]
  }
  return value
}

/**
 * The first problem that a schema found in a document, as a sentence: where and what.
 *
 * @param names what the document is called by itself, and before the place of something inside it
 */
export function schemaProblem(
  error: z.core.$ZodError,
  document: unknown,
  names: { whole: string; inside: string },
): string {
  const issue = error.issues[0]
  if (issue === undefined) return `${names.whole} has the wrong form.`
  const problem = words(issue, at(document, issue.path))
  const where = place(document, issue.path)
  return `${where === '' ? names.whole : `${names.inside}${where}`} ${problem}.`
}
