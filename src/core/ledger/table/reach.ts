import type { Source } from '../../uncertainty/source.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'

/** What a row of the table is uncertain by: its adopted value, and the factor to the unit of the row. */
export interface RowValue {
  name: string
  /** null: the row is open. */
  adopted: Uncertain | null
  factor: number
}

/** The rows that a source moves, from the last one back: sources that move the same rows have one and the same. */
export interface Reach {
  readonly row: number
  readonly before: Reach | null
}

/** A source with what it contributes to each of the rows it moves, in their order and units. */
export interface Reaching {
  readonly source: Source
  reach: Reach
  readonly parts: number[]
}

/** Every source that moves a row, and which rows it moves; one pass over what the rows are made of. */
export function sourcesOfRows(rows: readonly RowValue[]): Iterable<Reaching> {
  const all = new Map<Source, Reaching>()
  rows.forEach(({ adopted, factor }, row) => {
    if (adopted === null) return
    const { sources, coefficients } = adopted
    const onward = reachesInto(row)
    for (let i = 0; i < sources.length; i++) {
      // Read in place: every contribution of every row of every table is.
      const source = sources[i]
      const part = (coefficients[i] ?? Number.NaN) * factor
      if (source === undefined || part === 0) continue
      const known = all.get(source)
      const reach = onward(known?.reach ?? null)
      if (known === undefined) all.set(source, { source, reach, parts: [part] })
      else {
        known.reach = reach
        known.parts.push(part)
      }
    }
  })
  return all.values()
}

/** Sources that moved the same rows before a row go on together, and mostly stand together. */
function reachesInto(row: number): (before: Reach | null) => Reach {
  const made = new Map<Reach | null, Reach>()
  let last: Reach | undefined
  return (before) => {
    if (last !== undefined && last.before === before) return last
    last = made.get(before) ?? { row, before }
    made.set(before, last)
    return last
  }
}

/** Indices of the rows of a reach, ascending. */
export function rowsOf(reach: Reach): number[] {
  const rows: number[] = []
  for (let at: Reach | null = reach; at !== null; at = at.before) rows.push(at.row)
  return rows.reverse()
}
