import type { ThingKind } from '../model/thing-kind.ts'

/** What an edit touched. */
export interface Thing {
  kind: ThingKind
  /** Its id; of a dimension the name that it had after the edit, of one that was removed before it; of the job empty. */
  id: string
  /** Of evidence the name of its dimension, of a reference the id of its view. */
  of?: string
}

/** What was done to a thing. */
export type Verb =
  | 'added'
  | 'changed'
  | 'removed'
  | 'adopted'
  | 'withdrawn'
  | 'reinstated'
  | 'renamed'
  | 'moved'
  | 'picked again'
  | 'dismissed'
  | 'recalled'

/** A field with what it held before and after; one that was not there has no value. */
export interface ChangedField {
  field: string
  before?: unknown
  after?: unknown
}

/** What was known of a dimension's evidence as a value was adopted for it. */
export interface AdoptedFrom {
  /** What the evidence said that was adopted; undefined where a rule was. */
  adopted?: Readonly<Record<string, unknown>>
  /** Of the evidence that there was before, what the rules come to first. */
  first?: readonly { readonly id: string; readonly fields: Readonly<Record<string, unknown>> }[]
}

/** What one edit did to one thing. */
export interface Change {
  thing: Thing
  verb: Verb
  fields: ChangedField[]
  /** Of an adoption; undefined where it is not known. */
  from?: AdoptedFrom
}
