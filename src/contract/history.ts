import { z } from 'zod'
import { ITEM_WORDS } from '../core/job/model/item-kinds.ts'

/** The thing whose history is asked for: its list, and its id or, of a dimension, its name. */
export const subjectSchema = z.strictObject({
  kind: z.enum(ITEM_WORDS as [(typeof ITEM_WORDS)[number], ...typeof ITEM_WORDS]),
  id: z.string().min(1).max(4000),
})

/** What was done to a thing at one time. */
const toldEntrySchema = z.strictObject({
  /** Number of the edit; null: from before the history began, as the job itself says. */
  n: z.int().nullable(),
  /** ISO 8601; left out where it is not known. */
  at: z.string().optional(),
  /** The name of whoever did it; left out where it is not known. */
  who: z.string().optional(),
  /** What they did, in words that go on from their name, one thing each, with what was there before. */
  did: z.array(z.string()).min(1),
})

export type ToldEntry = z.infer<typeof toldEntrySchema>

/** The history of a thing, newest first. */
export const toldHistorySchema = z.strictObject({
  entries: z.array(toldEntrySchema),
  /** Whether there is more before the last of them. */
  more: z.boolean(),
})

export type ToldHistory = z.infer<typeof toldHistorySchema>
