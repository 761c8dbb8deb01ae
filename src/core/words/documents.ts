/** What may be wrong with a document as JSON, or by its schema, in sentences. */
import { quoted } from './quoted.ts'
import type { AnyReason, Say } from './reason.ts'

type Path = readonly (string | number)[]

/** Where something stands in a document: its path, and the place in words, empty for the whole. */
export type Where = {
  readonly where: string
  readonly path: Path
}

/** What a list asks of how long it is. */
type Bound = {
  readonly origin: string
  readonly bound: string
  readonly small: boolean
  readonly inclusive: boolean
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object with named fields',
}

function oneOf(values: readonly (string | number | boolean | null)[]): string {
  const words = values.map((value) => quoted(value))
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`
}

function range({ origin, bound, small, inclusive }: Bound): string {
  if (origin === 'string') {
    if (small) return bound === '1' ? 'must not be empty' : `must have ${bound} characters or more`
    return `must have ${bound} characters, no more`
  }
  if (origin === 'array') {
    // Lists of any length are only ever asked not to be empty; all other bounds are those of a fixed length.
    if (small && bound === '1') return 'must not be an empty list'
    return bound === '1' ? 'must have a single entry' : `must have ${bound} entries`
  }
  if (inclusive) return `must be a number of ${bound} or ${small ? 'more' : 'less'}`
  return `must be a number ${small ? 'greater' : 'less'} than ${bound}`
}

/** What a value is not, that its schema asks for: goes on from the place where it stands. */
const AT_A_PLACE = {
  'schema.missing': () => 'is missing',
  'schema.wrong-type': (p: { expected: string }) => `must be ${EXPECTED[p.expected] ?? p.expected}`,
  'schema.out-of-range': range,
  'schema.not-one-of': (p: { values: readonly (string | number | boolean | null)[] }) =>
    `must be ${oneOf(p.values)}`,
  'schema.wrong-form': () => 'has the wrong form',
  'schema.no-such-field': (p: { names: readonly string[] }) => `has no field ${oneOf(p.names)}`,
  'schema.other': (p: { text: string }) => p.text,
} as const

/** What is wrong with a document. */
export const DOCUMENT_WORDS = {
  ...AT_A_PLACE,
  'json.broken': (p: { line: number; column: number; expected: string; found: string | null }) =>
    `This is not JSON: at line ${p.line}, column ${p.column} there should be ${p.expected}, and there is ${p.found === null ? 'the end' : quoted(p.found)}.`,
  'json.unreadable': (p: { error: string }) => `This is not a job that can be read: ${p.error}.`,
  'json.not-plain': (p: Where & { what: string; problem: AnyReason }, say: Say) =>
    `${p.what}${p.where === '' ? '' : `: ${p.where}`} ${say(p.problem)}`,
  'json.not-finite': (p: { number: string }) => `is ${p.number}, and must be a number that JSON can hold.`,
  'json.holds': (p: { kind: string }) => `holds a ${p.kind}, which JSON cannot hold.`,
  'json.proto': () => 'has a field named "__proto__", which no job may have: take it out.',
  'json.too-deep': (p: { what: string; inside: string | null }) =>
    `${p.what} is nested too deep${p.inside === null ? '' : ` inside ${quoted(p.inside)}`}: no sound file is.`,
  'schema.problem': (p: Where & { whole: string; inside: string; problem: AnyReason }, say: Say) =>
    `${p.where === '' ? p.whole : `${p.inside}${p.where}`} ${say(p.problem)}.`,
} as const
