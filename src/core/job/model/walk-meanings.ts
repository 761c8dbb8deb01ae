import { z } from 'zod'
import { type Meaning, meaningOf } from './meaning.ts'
import { unwrapped } from './schema-shape.ts'

/** Where a walk has come to. It goes on changing: copy what is to be kept. */
export interface Whereabouts {
  /** Of the value in the document. */
  readonly path: readonly PropertyKey[]
  /** The objects that hold it, the outermost first. */
  readonly holders: readonly object[]
}

/** Takes a text that means something and gives what is to stand in its place. */
type Visit<M extends Meaning = Meaning> = (text: string, meaning: M, at: Whereabouts) => string

interface Trail {
  path: PropertyKey[]
  holders: object[]
}

/** Goes through a value of one schema; gives back the value, or a copy where a visit changed something in it. */
type Walk = (value: unknown, visit: Visit, trail: Trail) => unknown

type Wanted = (meaning: Meaning) => boolean

function textWalk(meaning: Meaning): Walk {
  return (value, visit, trail) => (typeof value === 'string' ? visit(value, meaning, trail) : value)
}

function listWalk(entries: readonly (Walk | null)[], rest: Walk | null): Walk | null {
  if (rest === null && entries.every((entry) => entry === null)) return null
  return (value, visit, trail) => {
    if (!Array.isArray(value)) return value
    let changed: unknown[] | undefined
    for (const [i, entry] of value.entries()) {
      const walk = entries[i] ?? rest
      if (walk === null || walk === undefined) continue
      trail.path.push(i)
      const after = walk(entry, visit, trail)
      trail.path.pop()
      if (after === entry) continue
      changed ??= [...value]
      changed[i] = after
    }
    return changed ?? value
  }
}

function objectWalk(fields: readonly (readonly [name: string, walk: Walk])[]): Walk | null {
  if (fields.length === 0) return null
  return (value, visit, trail) => {
    if (typeof value !== 'object' || value === null) return value
    let changed: Record<string, unknown> | undefined
    trail.holders.push(value)
    for (const [name, walk] of fields) {
      const inner = (value as Record<string, unknown>)[name]
      if (inner === undefined) continue
      trail.path.push(name)
      const after = walk(inner, visit, trail)
      trail.path.pop()
      if (after === inner) continue
      changed ??= { ...value }
      changed[name] = after
    }
    trail.holders.pop()
    return changed ?? value
  }
}

function unionWalk(discriminator: string, options: readonly z.core.$ZodType[], wanted: Wanted): Walk | null {
  const byKind = new Map<unknown, Walk>()
  for (const option of options) {
    const walk = compile(option, wanted)
    const kind = option instanceof z.ZodObject ? option.shape[discriminator] : undefined
    if (walk !== null && kind instanceof z.ZodLiteral) byKind.set(kind.value, walk)
  }
  if (byKind.size === 0) return null
  return (value, visit, trail) => {
    if (typeof value !== 'object' || value === null) return value
    const walk = byKind.get((value as Record<string, unknown>)[discriminator])
    return walk === undefined ? value : walk(value, visit, trail)
  }
}

/** The walk to what is wanted in values of a schema; null where there is none. */
function compile(schema: unknown, wanted: Wanted): Walk | null {
  const plain = unwrapped(schema)
  if (!(plain instanceof z.ZodType)) return null
  const meaning = meaningOf(plain)
  if (meaning !== undefined) return wanted(meaning) ? textWalk(meaning) : null
  if (plain instanceof z.ZodArray) return listWalk([], compile(plain.element, wanted))
  if (plain instanceof z.ZodTuple) {
    return listWalk(
      plain.def.items.map((item) => compile(item, wanted)),
      null,
    )
  }
  if (plain instanceof z.ZodDiscriminatedUnion) {
    return unionWalk(plain.def.discriminator, plain.options, wanted)
  }
  if (!(plain instanceof z.ZodObject)) return null
  return objectWalk(
    Object.entries(plain.shape).flatMap(([name, field]): (readonly [string, Walk])[] => {
      const walk = compile(field, wanted)
      return walk === null ? [] : [[name, walk]]
    }),
  )
}

/** Goes through the texts of some meanings in documents of one schema. */
export interface MeaningWalk<M extends Meaning> {
  /** Visits them in the order of the schema. */
  each(document: unknown, visit: (text: string, meaning: M, at: Whereabouts) => void): void
  /** The document with what the visits give in their place; what did not change is shared, all of it where nothing did. */
  map<T>(document: T, visit: Visit<M>): T
}

/** The walk to all texts of some meanings in documents of a schema, worked out once. */
export function walkMeanings<Is extends Meaning['is']>(
  schema: z.ZodType,
  ...wanted: readonly Is[]
): MeaningWalk<Extract<Meaning, { is: Is }>> {
  type M = Extract<Meaning, { is: Is }>
  const isWanted = (meaning: Meaning): meaning is M => (wanted as readonly string[]).includes(meaning.is)
  const walk = compile(schema, isWanted)
  const go = (document: unknown, visit: Visit<M>): unknown =>
    walk === null
      ? document
      : walk(document, (text, meaning, at) => (isWanted(meaning) ? visit(text, meaning, at) : text), {
          path: [],
          holders: [],
        })
  return {
    each: (document, visit) => {
      const look: Visit<M> = (text, meaning, at) => {
        visit(text, meaning, at)
        return text
      }
      go(document, look)
    },
    map: <T>(document: T, visit: Visit<M>): T => go(document, visit) as T,
  }
}
