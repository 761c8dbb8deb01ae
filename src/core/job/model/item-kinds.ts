import type { z } from 'zod'
import type { ItemKind } from './meaning.ts'
import {
  dimensionSchema,
  instrumentSchema,
  markSchema,
  noteSchema,
  personSchema,
  relationSchema,
  sheetSchema,
  viewSchema,
} from './schema.ts'
import type { Job } from './types.ts'

/** How items of one kind are kept in a job. */
export interface KindOfItem {
  /** The list that they stand in. */
  readonly list: keyof Job
  readonly schema: z.ZodType
  /** The field that they go by. */
  readonly key: 'id' | 'name'
  /** Fields that have edits of their own. */
  readonly locked: readonly string[]
}

/** How each kind of item is kept in a job. */
export const ITEM_KINDS = {
  person: { list: 'people', schema: personSchema, key: 'id', locked: [] },
  instrument: { list: 'instruments', schema: instrumentSchema, key: 'id', locked: [] },
  sheet: { list: 'sheets', schema: sheetSchema, key: 'id', locked: ['dismissed'] },
  view: { list: 'views', schema: viewSchema, key: 'id', locked: ['references'] },
  mark: { list: 'marks', schema: markSchema, key: 'id', locked: [] },
  dimension: { list: 'dimensions', schema: dimensionSchema, key: 'name', locked: ['evidence', 'adopt'] },
  relation: { list: 'relations', schema: relationSchema, key: 'id', locked: [] },
  note: { list: 'notes', schema: noteSchema, key: 'id', locked: [] },
} as const satisfies Record<ItemKind, KindOfItem>

/** The lists of a job. */
export type ListName = (typeof ITEM_KINDS)[ItemKind]['list']

/** An item of a kind, as a job holds it. */
export type ItemOf<K extends ItemKind> = Job[(typeof ITEM_KINDS)[K]['list']][number]

export const ITEM_WORDS = Object.keys(ITEM_KINDS) as ItemKind[]

const LISTS: ReadonlySet<string> = new Set(ITEM_WORDS.map((kind) => ITEM_KINDS[kind].list))

/** Whether a field of a job is one of its lists. */
export const isList = (field: string): field is ListName => LISTS.has(field)

export const isItemKind = (word: string): word is ItemKind => Object.hasOwn(ITEM_KINDS, word)

/** What an item of a list goes by. */
export const nameOf = (item: object, key: 'id' | 'name'): string =>
  String((item as Record<string, unknown>)[key])
