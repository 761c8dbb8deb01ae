import type { ChangedField } from './change.ts'

/** Fields with their values, as an item or a change has them. */
export type Fields = Readonly<Record<string, unknown>>

/** What a field holds; a field can have any name, also one that every object has. */
const own = (fields: Fields, name: string): unknown =>
  Object.hasOwn(fields, name) ? fields[name] : undefined

/** Visits the names of the fields of two states of a thing, each once. */
function eachField(before: Fields, after: Fields, visit: (field: string) => void): void {
  for (const field of Object.keys(before)) visit(field)
  for (const field of Object.keys(after)) if (!Object.hasOwn(before, field)) visit(field)
}

/** Whether two values of a job, which is plain JSON, are the same; a field without a value is as good as none. */
export function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const [before, after] = [a as Fields, b as Fields]
  let same = true
  eachField(before, after, (field) => {
    same &&= isSame(own(before, field), own(after, field))
  })
  return same
}

/**
 * The fields in which two states of a thing differ, those of the state before first.
 * @param decided one that is told also where it is the same
 */
export function changedFields(before: Fields, after: Fields, decided?: string): ChangedField[] {
  const found: ChangedField[] = []
  eachField(before, after, (field) => {
    const [was, is] = [own(before, field), own(after, field)]
    if (field !== decided && isSame(was, is)) return
    const changed: ChangedField = { field }
    if (was !== undefined) changed.before = was
    if (is !== undefined) changed.after = is
    found.push(changed)
  })
  return found
}
