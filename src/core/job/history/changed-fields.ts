import type { ChangedField } from './change.ts'

/** Fields with their values, as an item or a change has them. */
export type Fields = Readonly<Record<string, unknown>>

/** What a field holds; a field can have any name, also one that every object has. */
const own = (fields: Fields, name: string): unknown =>
  Object.hasOwn(fields, name) ? fields[name] : undefined

/** Whether two values of a job, which is plain JSON, are the same; a field without a value is as good as none. */
function isSame(a: unknown, b: unknown): boolean {
  if (a === b) return true
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const [before, after] = [a as Fields, b as Fields]
  const names = new Set([...Object.keys(before), ...Object.keys(after)])
  return [...names].every((name) => isSame(own(before, name), own(after, name)))
}

/**
 * The fields in which two states of a thing differ, those of the state before first.
 * @param decided one that is told also where it is the same
 */
export function changedFields(before: Fields, after: Fields, decided?: string): ChangedField[] {
  const names = new Set([...Object.keys(before), ...Object.keys(after)])
  return [...names].flatMap((field) => {
    const [was, is] = [own(before, field), own(after, field)]
    if (field !== decided && isSame(was, is)) return []
    return [
      { field, ...(was === undefined ? {} : { before: was }), ...(is === undefined ? {} : { after: is }) },
    ]
  })
}
