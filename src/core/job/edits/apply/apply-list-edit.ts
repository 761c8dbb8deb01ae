import type { z } from 'zod'
import { reason } from '../../../words/core-words.ts'
import { quoted } from '../../../words/quoted.ts'
import { JobError } from '../../text/job-error.ts'
import { changeFields, type FieldChange } from './change-fields.ts'
import { inserted, replaced, without } from './list-with.ts'

/** How the items of a list are called and kept. */
export interface ListRules {
  /** The word for one of them. */
  readonly word: string
  /** The field they go by. */
  readonly key: 'id' | 'name'
  readonly schema: z.ZodType
  /** Fields that a change can't touch, beside the key. */
  readonly locked: readonly string[]
}

/** What is done to one item of a list. */
export type ListEdit<T> =
  | { verb: 'add'; item: T; index?: number }
  | ({ verb: 'change'; name: string } & FieldChange)
  | { verb: 'remove'; name: string }

/** What an item goes by. */
export const nameOf = (item: object, key: 'id' | 'name'): string =>
  String((item as Record<string, unknown>)[key])

/** Whether an item goes by a name. */
export const isNamed = (item: object, key: 'id' | 'name', name: string): boolean => nameOf(item, key) === name

/** Where an item stands in its list. @throws JobError when it is not there */
export function indexIn(
  list: readonly object[],
  name: string,
  { word, key }: Pick<ListRules, 'word' | 'key'>,
): number {
  const index = list.findIndex((item) => isNamed(item, key, name))
  if (index < 0) throw new JobError(reason('edit.no-such-item', { kind: word, id: name }))
  return index
}

/**
 * A list after an edit to one of its items, and the edit that puts it back.
 *
 * @throws JobError when there is no such item or place, or the item would have the wrong form
 */
export function applyListEdit<T extends object>(
  list: readonly T[],
  edit: ListEdit<T>,
  rules: ListRules,
): { list: T[]; back: ListEdit<T> } {
  if (edit.verb === 'add') {
    const { item, index = list.length } = edit
    const name = nameOf(item, rules.key)
    if (list.some((other) => isNamed(other, rules.key, name))) {
      throw new JobError(reason('edit.item-there-already', { kind: rules.word, id: name, key: rules.key }))
    }
    return { list: inserted(list, item, index, rules.word), back: { verb: 'remove', name } }
  }
  const at = indexIn(list, edit.name, rules)
  const item = list[at] as T
  if (edit.verb === 'remove') return { list: without(list, at), back: { verb: 'add', item, index: at } }
  const what = `${rules.word} ${quoted(edit.name)}`
  const changed = changeFields(item, edit, what, rules.schema, [rules.key, ...rules.locked])
  return {
    list: replaced(list, at, changed.item),
    back: { verb: 'change', name: edit.name, ...changed.back },
  }
}
