import { z } from 'zod'
import { jobSchema } from './model/schema.ts'
import { entryOf, unwrapped } from './model/schema-shape.ts'
import type { Job } from './model/types.ts'
import { relisted } from './picks/with-picks.ts'

const COLUMNS = 100

type Fields = Record<string, unknown>

/** The fields of one shape in the order of the model, each with what the schema knows of its value. */
function shapeOf(schema: unknown, value: Fields): Record<string, unknown> {
  const plain = unwrapped(schema)
  if (plain instanceof z.ZodObject) return plain.shape
  if (plain instanceof z.ZodDiscriminatedUnion) {
    const { discriminator } = plain.def
    for (const option of plain.options) {
      const shape = shapeOf(option, value)
      const kind = shape[discriminator]
      if (kind instanceof z.ZodLiteral && kind.value === value[discriminator]) return shape
    }
  }
  return {}
}

/** Known fields in the order of the model, then the unknown ones by name, so that the same job gives the same text. */
function orderedKeys(value: Fields, shape: Record<string, unknown>): string[] {
  const known = Object.keys(shape).filter((key) => value[key] !== undefined)
  const unknown = Object.keys(value).filter((key) => !Object.hasOwn(shape, key) && value[key] !== undefined)
  return [...known, ...unknown.sort()]
}

/** A list of numbers, texts, or lists of them, on one line; null when it holds an object. */
function onOneLine(value: unknown): string | null {
  if (!Array.isArray(value)) return typeof value === 'object' && value !== null ? null : JSON.stringify(value)
  const parts: string[] = []
  for (const element of value) {
    const part = onOneLine(element)
    if (part === null) return null
    parts.push(part)
  }
  return `[${parts.join(', ')}]`
}

function write(value: unknown, schema: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const inner = `${indent}  `
  if (Array.isArray(value)) {
    const line = onOneLine(value)
    if (line !== null && indent.length + line.length <= COLUMNS) return line
    const element = entryOf(schema)
    return `[\n${value.map((item) => inner + write(item, element, inner)).join(',\n')}\n${indent}]`
  }
  const fields = value as Fields
  const shape = shapeOf(schema, fields)
  const lines = orderedKeys(fields, shape).map(
    (key) => `${inner}${JSON.stringify(key)}: ${write(fields[key], shape[key], inner)}`,
  )
  return lines.length === 0 ? '{}' : `{\n${lines.join(',\n')}\n${indent}}`
}

/**
 * The text of a job.json: two spaces, fields in the order of the model and unknown ones after them by name,
 * lists of numbers on one line where they fit, a newline at the end. The same job always gives the same text,
 * and reading the text gives the same job. Where a mark's picks and the fields that say the same do not, the fields are
 * written.
 */
export function writeJob(job: Job): string {
  return `${write({ ...job, marks: job.marks.map(relisted) }, jobSchema, '')}\n`
}
