import type { z } from 'zod'
import { reason } from '../../../words/core-words.ts'
import { quoted } from '../../../words/quoted.ts'
import { type Labelled, labelBesideId } from '../../ids/label.ts'
import { nameOf } from '../../model/item-kinds.ts'
import { JobError } from '../../text/job-error.ts'
import { changeFields, type FieldChange } from './change-fields.ts'
import type { EditedList } from './edited-list.ts'

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

/** Where an item stands in its list. @throws JobError when it is not there */
export function placeIn<T extends object>(list: EditedList<T>, name: string, word: string): number {
  const place = list.placeOf(name)
  if (place < 0) throw new JobError(reason('edit.no-such-item', { kind: word, id: name }))
  return place
}

/** Puts an item into a list. @throws JobError when the index is beyond its end */
export function insert<T extends object>(list: EditedList<T>, item: T, index: number, word: string): void {
  if (index > list.size) {
    throw new JobError(reason('edit.index-beyond-end', { kind: word, index, length: list.size }))
  }
  list.insert(item, index)
}

/** An item in words, as errors say which: its label, or its noun and what it goes by. */
export function whatIsChanged(item: object, { word, key }: Pick<ListRules, 'word' | 'key'>): string {
  const label = key === 'id' ? labelBesideId(item as Labelled) : undefined
  return label ?? `${word} ${quoted(nameOf(item, key))}`
}

/**
 * Edits one of the items of a list, and gives the edit that puts it back.
 *
 * @throws JobError when there is no such item or place, or the item would have the wrong form
 */
export function applyListEdit<T extends object>(
  list: EditedList<T>,
  edit: ListEdit<T>,
  { word, key, schema, locked }: ListRules,
): ListEdit<T> {
  if (edit.verb === 'add') {
    const { item, index = list.size } = edit
    const name = nameOf(item, key)
    if (list.placeOf(name) >= 0) {
      throw new JobError(reason('edit.item-there-already', { kind: word, id: name, key }))
    }
    insert(list, item, index, word)
    return { verb: 'remove', name }
  }
  const at = placeIn(list, edit.name, word)
  const item = list.at(at)
  if (edit.verb === 'remove') {
    list.remove(at)
    return { verb: 'add', item, index: at }
  }
  const what = whatIsChanged(item, { word, key })
  const changed = changeFields(item, edit, what, schema, [key, ...locked])
  list.replace(at, changed.item)
  return { verb: 'change', name: edit.name, ...changed.back }
}
