import type { z } from 'zod'
import type { ItemKind } from '../edits/edit-types.ts'
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

/** The lists of a job. */
export type ListName =
  | 'people'
  | 'instruments'
  | 'sheets'
  | 'views'
  | 'marks'
  | 'dimensions'
  | 'relations'
  | 'notes'

export interface KindOfItem {
  readonly list: ListName
  readonly schema: z.ZodType
  /** The field that items go by. */
  readonly key: 'id' | 'name'
  /** Fields that have edits of their own. */
  readonly locked: readonly string[]
}

/** How each kind of item is kept in a job. */
export const ITEM_KINDS: Readonly<Record<ItemKind, KindOfItem>> = {
  person: { list: 'people', schema: personSchema, key: 'id', locked: [] },
  instrument: { list: 'instruments', schema: instrumentSchema, key: 'id', locked: [] },
  sheet: { list: 'sheets', schema: sheetSchema, key: 'id', locked: [] },
  view: { list: 'views', schema: viewSchema, key: 'id', locked: ['references'] },
  mark: { list: 'marks', schema: markSchema, key: 'id', locked: [] },
  dimension: { list: 'dimensions', schema: dimensionSchema, key: 'name', locked: ['evidence', 'adopt'] },
  relation: { list: 'relations', schema: relationSchema, key: 'id', locked: [] },
  note: { list: 'notes', schema: noteSchema, key: 'id', locked: [] },
}

export const ITEM_WORDS = Object.keys(ITEM_KINDS) as ItemKind[]
