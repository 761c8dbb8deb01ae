import { z } from 'zod'

/** What the optional wrappings of a schema hold. */
export function unwrapped(schema: unknown): unknown {
  return schema instanceof z.ZodOptional ? unwrapped(schema.unwrap()) : schema
}

/** The fields that a shape of any kind may have, each with the schemas of its value. */
export function fieldsOf(schema: unknown): Map<string, unknown[]> {
  const plain = unwrapped(schema)
  const fields = new Map<string, unknown[]>()
  if (plain instanceof z.ZodObject) {
    for (const [name, value] of Object.entries(plain.shape)) fields.set(name, [value])
  } else if (plain instanceof z.ZodDiscriminatedUnion) {
    for (const option of plain.options) {
      for (const [name, values] of fieldsOf(option))
        fields.set(name, [...(fields.get(name) ?? []), ...values])
    }
  }
  return fields
}

/** The schema of the entries of a list; undefined for what is no list. */
export function entryOf(schema: unknown): unknown {
  const plain = unwrapped(schema)
  return plain instanceof z.ZodArray ? plain.element : undefined
}
