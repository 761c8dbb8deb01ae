import type { z } from 'zod'
import { reason } from '../../../words/core-words.ts'
import { JobError } from '../../text/job-error.ts'
import { schemaProblem } from '../../text/schema-problem.ts'

/** What a change does to fields. */
export interface FieldChange {
  set?: Record<string, unknown>
  clear?: string[]
}

/**
 * An item with fields set and cleared, and the change that puts them back.
 *
 * @param what the item in words, e.g. `mark "M4"`
 * @param locked fields that no change may touch
 * @throws JobError when a field is locked, or when the item would have the wrong form
 */
export function changeFields<T extends object>(
  item: T,
  change: FieldChange,
  what: string,
  schema: z.ZodType,
  locked: readonly string[],
): { item: T; back: FieldChange } {
  const set = change.set ?? {}
  const clear = change.clear ?? []
  const touched = [...Object.keys(set), ...clear]
  for (const key of touched) {
    if (locked.includes(key)) {
      throw new JobError(reason('edit.locked-field', { what, field: key }))
    }
  }
  const twice = clear.find((key) => Object.hasOwn(set, key))
  if (twice !== undefined) throw new JobError(reason('edit.set-and-cleared', { what, field: twice }))

  const old = item as Record<string, unknown>
  const merged: Record<string, unknown> = { ...old, ...set }
  for (const key of clear) delete merged[key]
  const parsed = schema.safeParse(merged)
  if (!parsed.success) {
    throw new JobError(schemaProblem(parsed.error, merged, { whole: what, inside: `${what}: ` }))
  }

  const back: FieldChange = {}
  for (const key of new Set(touched)) {
    if (Object.hasOwn(old, key) && old[key] !== undefined) back.set = { ...back.set, [key]: old[key] }
    else if (Object.hasOwn(set, key)) back.clear = [...(back.clear ?? []), key]
  }
  return { item: parsed.data as T, back }
}

/** Only what a change does to fields, of an edit that says more. */
export function fieldChange({ set, clear }: FieldChange): FieldChange {
  return { ...(set === undefined ? {} : { set }), ...(clear === undefined ? {} : { clear }) }
}
