import type { Pixel } from '../../geometry/frames.ts'
import type {
  Dimension,
  Evidence,
  Instrument,
  Job,
  Mark,
  Note,
  Person,
  Reference,
  Relation,
  Sheet,
  View,
} from '../model/types.ts'

/** What a job lists, by the word for one of them. */
export interface Items {
  person: Person
  instrument: Instrument
  sheet: Sheet
  view: View
  mark: Mark
  dimension: Dimension
  relation: Relation
  note: Note
}

export type ItemKind = keyof Items

/** Fields with their new values. */
export type Changes<T, Locked extends PropertyKey = never> = T extends unknown
  ? { [K in Exclude<keyof T, Locked>]?: T[K] }
  : never

/** `set` gives fields new values, `clear` takes optional fields away; all others stay as they are. */
interface Change<T, Locked extends PropertyKey> {
  set?: Changes<T, Locked>
  clear?: string[]
}

/** Fields that have edits of their own, so that a change can't touch them. */
export interface Locked {
  person: 'id'
  instrument: 'id'
  sheet: 'id'
  view: 'id' | 'references'
  mark: 'id'
  dimension: 'name' | 'evidence' | 'adopt'
  relation: 'id'
  note: 'id'
}

/** Dimensions go by their name, all else by its id. */
type Key<K extends ItemKind> = K extends 'dimension' ? { name: string } : { id: string }

type ItemEdit<K extends ItemKind> =
  /** index: where in the list; at its end unless said otherwise. */
  | { do: `add-${K}`; item: Items[K]; index?: number }
  | ({ do: `change-${K}` } & Key<K> & Change<Items[K], Locked[K]>)
  | ({ do: `remove-${K}` } & Key<K> & (K extends 'dimension' ? { undo?: true } : unknown))

/**
 * One edit to a job: plain JSON, so that a journal can hold it.
 *
 * Evidence is withdrawn, not removed. `remove-evidence`, and `remove-dimension` of a dimension that holds evidence,
 * exist only to take back the edit that added them, and say so by `undo: true`.
 */
export type Edit =
  | ({ do: 'describe' } & Change<Pick<Job, 'title' | 'unit' | 'tolerance' | 'gauge'>, never>)
  | { [K in ItemKind]: ItemEdit<K> }[ItemKind]
  | { do: 'add-evidence'; dimension: string; item: Evidence; index?: number }
  | ({ do: 'change-evidence'; dimension: string; id: string } & Change<Evidence, 'id' | 'withdrawn'>)
  | { do: 'withdraw-evidence'; dimension: string; id: string; why: string }
  | { do: 'reinstate-evidence'; dimension: string; id: string }
  | { do: 'remove-evidence'; dimension: string; id: string; undo: true }
  | { do: 'add-reference'; view: string; item: Reference; index?: number }
  | ({ do: 'change-reference'; view: string; id: string } & Change<Reference, 'id'>)
  | { do: 'remove-reference'; view: string; id: string }
  /** Without `adopt`: by the rules again. */
  | { do: 'adopt'; dimension: string; adopt?: string }
  /** In formulas, relations and what notes are about as well. */
  | { do: 'rename-dimension'; name: string; to: string }
  | { do: 'move-dimension'; name: string; index: number }
  /** One more independent pick of a point (`pixel`), or of a line, circle or path (`pixels`). */
  | { do: 'repeat-pick'; mark: string; pixel?: Pixel; pixels?: Pixel[]; by?: string; at?: string }
  /** Several edits as one, under one name: all of them or none. */
  | { do: 'several'; name: string; edits: Edit[] }
