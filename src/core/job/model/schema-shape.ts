import { z } from 'zod'

/** The fields that a shape of any kind may have, each with the schemas of its value. */
export function fieldsOf(schema: unknown): Map<string, unknown[]> {
  const fields = new Map<string, unknown[]>()
  if (schema instanceof z.ZodOptional) return fieldsOf(schema.unwrap())
  if (schema instanceof z.ZodObject) {
    for (const [name, value] of Object.entries(schema.shape)) fields.set(name, [value])
  } else if (schema instanceof z.ZodDiscriminatedUnion) {
    for (const option of schema.options) {
      for (const [name, values] of fieldsOf(option))
        fields.set(name, [...(fields.get(name) ?? []), ...values])
    }
  }
  return fields
}

/** The schema of the entries of a list; undefined for what is no list. */
export function entryOf(schema: unknown): unknown {
  if (schema instanceof z.ZodOptional) return entryOf(schema.unwrap())
  return schema instanceof z.ZodArray ? schema.element : undefined
}
