import type { ChangedField } from './change.ts'
import { isSame } from './changed-fields.ts'

/** What a change did to the list of the picks of a mark after the first. */
export interface PicksChanged {
  /** How many were taken back. */
  count: number
  /** Which one was taken back, counted from 1 with the first pick; null: there were several. */
  pick: number | null
  /** Instead of that: where it was picked once more, and where before as far as that is known. */
  again?: ChangedField
}

/** What only the picks after the first say. */
const OF_REPEATS: ReadonlySet<string> = new Set(['repeats', 'repeatedBy'])

const listIn = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])

/** The field of a place: a point, or the points of something else. */
const fieldOf = (place: unknown): string =>
  Array.isArray(place) && typeof place[0] === 'number' ? 'pixel' : 'pixels'

/** Whether picks were taken back or one was added, where a change of a mark did nothing else; null: neither. */
export function changeOfPicks(fields: readonly ChangedField[]): PicksChanged | null {
  const repeats = fields.find(({ field }) => field === 'repeats')
  if (repeats === undefined || !fields.every(({ field }) => OF_REPEATS.has(field))) return null
  const [before, after] = [listIn(repeats.before), listIn(repeats.after)]
  const [fewer, more] = before.length < after.length ? [before, after] : [after, before]
  const at = more.findIndex((place, i) => !isSame(place, fewer[i]))
  const count = more.length - fewer.length
  if (count === 0 || !isSame(more.toSpliced(at, count), fewer)) return null
  if (more === before) return { count, pick: count === 1 ? at + 2 : null }
  if (count > 1 || at < fewer.length) return null
  const [was, is] = [before.at(-1), after.at(-1)]
  return {
    count: 0,
    pick: null,
    again: { field: fieldOf(is), ...(was === undefined ? {} : { before: was }), after: is },
  }
}
