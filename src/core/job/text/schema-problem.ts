import type { z } from 'zod'
import type { CoreReason } from '../../words/core-words.ts'
import { reason } from '../../words/core-words.ts'
import { whereIn } from './whereabouts.ts'

type Issue = z.core.$ZodIssue
type Shown = string | number | boolean | null

const shown = (values: readonly unknown[]): Shown[] =>
  values.map((value) =>
    typeof value === 'number' || typeof value === 'boolean' || value === null ? value : String(value),
  )

function problemOf(issue: Issue, value: unknown): CoreReason {
  if (value === undefined) return reason('schema.missing')
  switch (issue.code) {
    case 'invalid_type':
      return reason('schema.wrong-type', { expected: issue.expected })
    case 'too_small':
    case 'too_big': {
      const small = issue.code === 'too_small'
      return reason('schema.out-of-range', {
        origin: issue.origin,
        bound: String(small ? issue.minimum : issue.maximum),
        small,
        inclusive: issue.inclusive === true,
      })
    }
    case 'invalid_value':
      return reason('schema.not-one-of', { values: shown(issue.values) })
    case 'invalid_union':
      return 'options' in issue && issue.options !== undefined
        ? reason('schema.not-one-of', { values: shown(issue.options) })
        : reason('schema.wrong-form')
    case 'unrecognized_keys':
      return reason('schema.no-such-field', { names: issue.keys })
    default:
      return reason('schema.other', { text: issue.message })
  }
}

function valueAt(whole: unknown, path: readonly PropertyKey[]): unknown {
  let value = whole
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined
    value = (value as Record<PropertyKey, unknown>)[key]
  }
  return value
}

/**
 * The first problem that a schema found in a document: where and what.
 *
 * @param names what the document is called by itself, and before the place of something inside it
 */
export function schemaProblem(
  error: z.core.$ZodError,
  document: unknown,
  names: { whole: string; inside: string },
): CoreReason {
  const issue = error.issues[0]
  const path = issue?.path ?? []
  const problem =
    issue === undefined ? reason('schema.wrong-form') : problemOf(issue, valueAt(document, path))
  return reason('schema.problem', { ...names, ...whereIn(document, path), problem })
}
