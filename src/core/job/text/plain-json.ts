import { type CoreReason, reason } from '../../words/core-words.ts'
import { JobError } from './job-error.ts'
import { whereIn } from './whereabouts.ts'

/** How deep lists and objects may be nested inside one another in a job document. */
export const DEEPEST_JOB = 100

/** How deep one item of a job (a mark, a piece of evidence, ...) may be nested; an item lies a few levels down. */
export const DEEPEST_ITEM = 60

/** How deep an edit may be nested: an item, and the named lists of edits around it. */
export const DEEPEST_EDIT = 200

function kindOf(value: object): string {
  const name: unknown = Object.getPrototypeOf(value)?.constructor?.name
  return typeof name === 'string' && name !== '' ? name : 'object'
}

/** What is being copied, and where in it the copying has come to. */
interface Walk {
  readonly what: string
  readonly whole: unknown
  readonly path: PropertyKey[]
}

/** Refuses the value: the place in the whole, then what is wrong there. */
function refuse({ what, whole, path }: Walk, problem: CoreReason): never {
  throw new JobError(reason('json.not-plain', { what, ...whereIn(whole, path), problem }))
}

function copyInside(value: unknown, key: PropertyKey, walk: Walk, room: number): unknown {
  walk.path.push(key)
  const copied = copy(value, walk, room)
  walk.path.pop()
  return copied
}

function copy(value: unknown, walk: Walk, room: number): unknown {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return value
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) refuse(walk, reason('json.not-finite', { number: String(value) }))
    // A stored -0 reads back as 0, so it is one from the start.
    return value === 0 ? 0 : value
  }
  if (typeof value !== 'object') refuse(walk, reason('json.holds', { kind: typeof value }))
  if (room === 0) {
    const inside = walk.path.find((key) => typeof key === 'string') ?? null
    throw new JobError(reason('json.too-deep', { what: walk.what, inside }))
  }
  if (Array.isArray(value)) {
    return Array.from(value, (element, i) => copyInside(element ?? null, i, walk, room - 1))
  }
  const prototype: unknown = Object.getPrototypeOf(value)
  if (prototype !== null && prototype !== Object.prototype && Object.getPrototypeOf(prototype) !== null) {
    refuse(walk, reason('json.holds', { kind: kindOf(value) }))
  }
  const result: Record<string, unknown> = {}
  for (const [key, inner] of Object.entries(value)) {
    if (key === '__proto__') {
      refuse(walk, reason('json.proto'))
    }
    if (inner !== undefined) result[key] = copyInside(inner, key, walk, room - 1)
  }
  return result
}

/**
 * A copy of a JSON value that shares nothing with it. Fields that are undefined are left out.
 *
 * @param what the name of the whole, for messages: "the job", "the edit"
 * @param deepest how many levels of lists and objects are allowed
 * @throws JobError when it is nested deeper (or in a circle), has a field `__proto__`, or is not JSON
 */
export function plainJson(value: unknown, what: string, deepest: number): unknown {
  return copy(value, { what, whole: value, path: [] }, deepest)
}

function isPlain(value: unknown, room: number): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0)
  if (typeof value !== 'object' || value === null) return value !== undefined
  if (room === 0) return false
  if (Array.isArray(value)) return value.every((element) => isPlain(element, room - 1))
  for (const key of Object.keys(value)) {
    if (key === '__proto__' || !isPlain((value as Record<string, unknown>)[key], room - 1)) return false
  }
  return true
}

/**
 * The same as `plainJson` of a value that was just parsed from a text and that nobody else has: it is only copied where
 * it is not plain as it stands.
 */
export function plainParsed(value: unknown, what: string, deepest: number): unknown {
  return isPlain(value, deepest) ? value : plainJson(value, what, deepest)
}

/** Whether a JSON value is nested no deeper than so many levels of lists and objects. */
export function nestedAtMost(value: unknown, deepest: number): boolean {
  if (typeof value !== 'object' || value === null) return true
  if (deepest === 0) return false
  for (const inner of Object.values(value)) {
    if (typeof inner === 'object' && inner !== null && !nestedAtMost(inner, deepest - 1)) return false
  }
  return true
}
