import { z } from 'zod'
import { unwrapped } from './schema-shape.ts'

/** Whether a value is seen to be just as its schema wants it, so that parsing it would give the same again. */
export type Fits = (value: unknown) => boolean

/** Of what is not known here: it has to be parsed. */
const unseen: Fits = () => false

type Checked = z.ZodString | z.ZodNumber | z.ZodArray

/** Whether a value that is of the right type passes a check of its schema. */
function passes(check: z.core.$ZodCheck<never>, schema: Checked): Fits {
  if (check instanceof z.core.$ZodCheckMinLength) {
    const { minimum } = check._zod.def
    return (value) => (value as { length: number }).length >= minimum
  }
  if (check instanceof z.core.$ZodCheckMaxLength) {
    const { maximum } = check._zod.def
    return (value) => (value as { length: number }).length <= maximum
  }
  if (check instanceof z.core.$ZodCheckGreaterThan) {
    const { value: bound, inclusive } = check._zod.def
    return (value) => (value as number) > Number(bound) || (inclusive && value === bound)
  }
  if (check instanceof z.core.$ZodCheckLessThan) {
    const { value: bound, inclusive } = check._zod.def
    return (value) => (value as number) < Number(bound) || (inclusive && value === bound)
  }
  // A refinement only looks; what others do is not known.
  return check instanceof z.ZodCustom ? (value) => schema.safeParse(value).success : unseen
}

function withChecks(schema: Checked, isOfType: Fits): Fits {
  const checks = (schema.def.checks ?? []).map((check) => passes(check as z.core.$ZodCheck<never>, schema))
  const [first, ...more] = checks
  if (first === undefined) return isOfType
  if (more.length === 0) return (value) => isOfType(value) && first(value)
  return (value) => isOfType(value) && checks.every((check) => check(value))
}

function fitsNumber(schema: z.ZodNumber): Fits {
  if (schema instanceof z.ZodNumberFormat) return (value) => schema.safeParse(value).success
  return withChecks(schema, Number.isFinite)
}

function fitsTuple({ def }: z.ZodTuple): Fits {
  const items = def.items.map(fitsSchema)
  if (def.rest !== null) return unseen
  return (value) =>
    Array.isArray(value) && value.length === items.length && items.every((fits, i) => fits(value[i]))
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Fields that a loose object does not know may be anything; a strict one has none. */
function fitsObject({ def }: z.ZodObject): Fits {
  const strict = def.catchall instanceof z.ZodNever
  if (!strict && !(def.catchall instanceof z.ZodUnknown)) return unseen
  const fields = Object.entries(def.shape).map(([name, field]) => {
    const optional = field instanceof z.ZodOptional
    return { name, optional, fits: fitsSchema(unwrapped(field)) }
  })
  return (value) => {
    if (!isObject(value)) return false
    if (strict && !Object.keys(value).every((name) => Object.hasOwn(def.shape, name))) return false
    for (const { name, optional, fits } of fields) {
      const inner = value[name]
      if (inner === undefined ? !optional : !fits(inner)) return false
    }
    return true
  }
}

function fitsOneOf({ def }: z.ZodDiscriminatedUnion): Fits {
  const byKind = new Map<unknown, Fits>()
  for (const option of def.options) {
    const kind = option instanceof z.ZodObject ? option.shape[def.discriminator] : undefined
    if (!(kind instanceof z.ZodLiteral)) return unseen
    for (const value of kind.def.values) byKind.set(value, fitsSchema(option))
  }
  return (value) => {
    return isObject(value) && (byKind.get(value[def.discriminator])?.(value) ?? false)
  }
}

/** A schema that holds itself is gone into as far as the value goes. */
function fitsLazy({ def }: z.ZodLazy): Fits {
  let fits: Fits | undefined
  return (value) => {
    fits ??= fitsSchema(def.getter())
    return fits(value)
  }
}

/**
 * Tells quickly of a plain JSON value whether it fits a schema. Where it says no the value may fit all the same: parsing
 * it tells, and what is wrong with it.
 */
export function fitsSchema(schema: unknown): Fits {
  if (schema instanceof z.ZodString) return withChecks(schema, (value) => typeof value === 'string')
  if (schema instanceof z.ZodNumber) return fitsNumber(schema)
  if (schema instanceof z.ZodBoolean) return (value) => typeof value === 'boolean'
  if (schema instanceof z.ZodLiteral || schema instanceof z.ZodEnum) {
    const values: ReadonlySet<unknown> = new Set<unknown>(
      schema instanceof z.ZodLiteral ? schema.def.values : schema.options,
    )
    return (value) => values.has(value)
  }
  if (schema instanceof z.ZodArray) {
    const fits = fitsSchema(schema.def.element)
    return withChecks(schema, (value) => Array.isArray(value) && value.every(fits))
  }
  if (schema instanceof z.ZodTuple) return fitsTuple(schema)
  if (schema instanceof z.ZodLazy) return fitsLazy(schema)
  if (schema instanceof z.ZodRecord) return schema.def.valueType instanceof z.ZodUnknown ? isObject : unseen
  if (schema instanceof z.ZodDiscriminatedUnion) return fitsOneOf(schema)
  return schema instanceof z.ZodObject ? fitsObject(schema) : unseen
}
