import { z } from 'zod'

/** A list of the job, by the word for one of its items. */
export type ItemKind = 'person' | 'instrument' | 'sheet' | 'view' | 'mark' | 'dimension' | 'relation' | 'note'

/**
 * What a quantity is written as. A `size` is a length above nothing; a `figure` may be illegible, and a `slack` is of
 * the kind of its relation; the last three are of the kind of the dimension that they stand in.
 */
export type QuantityMeaning =
  | 'length'
  | 'size'
  | 'length or angle'
  | 'tolerance'
  | 'slack'
  | 'figure'
  | 'tolerance of the dimension'
  | 'reading of the dimension'
  | 'loss of the dimension'

/** What the text of a field stands for, so that every question about a job is answered from its schema. */
export type Meaning =
  /** The id of an item of the job; of a dimension, its name. */
  | { readonly is: 'reference'; readonly to: ItemKind }
  /** A quantity as a person writes it. */
  | { readonly is: 'quantity'; readonly as: QuantityMeaning }
  /** An expression, or an equation, over names of dimensions. */
  | { readonly is: 'formula' }
  /** The name of a dimension or the id of anything: it may be gone. */
  | { readonly is: 'subject' }
  /** An ISO 8601 date and time. */
  | { readonly is: 'time' }

const MEANINGS = z.registry<Meaning>()

/** The schema again, with its meaning noted. It is noted on this very object: wrap it afterwards, not before. */
export function means<S extends z.ZodType>(meaning: Meaning, schema: S): S {
  MEANINGS.add(schema, meaning)
  return schema
}

/** The meaning of a schema's texts; undefined where they have none to others. */
export const meaningOf = (schema: z.core.$ZodType): Meaning | undefined => MEANINGS.get(schema)
