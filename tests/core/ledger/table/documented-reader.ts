import { readFileSync } from 'node:fs'

/** What a calculator has of a table: the fields that docs/correlations.md names, out of its JSON. */
export interface ReadTable {
  rows: {
    name: string
    kind: string
    value: number | null
    u: number
    dof: number | null
    by: Record<string, number>
    interval?: { low: number; high: number }
  }[]
  sources: { id: string; name: string; dof?: number; estimate?: string }[]
}

type Combined = (table: ReadTable, derivatives: Record<string, number>) => { u: number; dof: number }

export const CORRELATIONS = readFileSync(new URL('../../../../docs/correlations.md', import.meta.url), 'utf8')

/** The reader of a table as docs/correlations.md prints it, run as it stands there. */
const printed = /```js\n([\s\S]*?)```/.exec(CORRELATIONS)?.[1] ?? ''
const loaded: { combined: Combined } = await import(`data:text/javascript,${encodeURIComponent(printed)}`)
export const { combined } = loaded

/** A table as it comes out of its JSON text. */
export const readTable = (text: string): ReadTable => JSON.parse(text)

export interface Calculation {
  formula: string
  kind: 'length' | 'angle' | 'area' | 'count'
  derivatives: Record<string, number>
}

type Row = ReadTable['rows'][number] & { value: number }

/** Every sum, difference, product and ratio of two rows that a dimension can be worked out from, not below nothing. */
export function calculations(a: Row, b: Row): Calculation[] {
  const [large, small] = a.value >= b.value ? [a, b] : [b, a]
  const { name: A, kind } = large
  const { name: B } = small
  const out: Calculation[] = []
  const add = (formula: string, kind: string, byA: number, byB: number): void => {
    out.push({ formula, kind: kind as Calculation['kind'], derivatives: { [A]: byA, [B]: byB } })
  }
  if (kind === small.kind) {
    add(`${A} + ${B}`, kind, 1, 1)
    add(`${A} - ${B}`, kind, 1, -1)
    if (small.value > 0) {
      add(`${A} / ${B}`, 'count', 1 / small.value, -large.value / small.value ** 2)
      add(`${B} / ${A}`, 'count', -small.value / large.value ** 2, 1 / large.value)
    }
  }
  const product = kind === 'count' ? small.kind : small.kind === 'count' ? kind : undefined
  if (kind === 'length' && small.kind === 'length') add(`${A} * ${B}`, 'area', small.value, large.value)
  else if (product !== undefined) add(`${A} * ${B}`, product, small.value, large.value)
  return out
}

/** Calculations with two different rows that have a value: both uncertain in two of three, one at least in the others. */
export function someCalculations(table: ReadTable, n: number, random: () => number): Calculation[] {
  const rows = table.rows.filter((row): row is Row => row.value !== null)
  const one = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)]
  const uncertain = rows.filter(({ u }) => u > 0)
  const out: Calculation[] = []
  while (out.length < n) {
    const a = one(uncertain)
    const b = one(random() < 2 / 3 ? uncertain : rows)
    if (a === undefined || b === undefined) return out
    const made = a === b ? undefined : one(calculations(a, b))
    if (made !== undefined) out.push(made)
  }
  return out
}

/** Where estimated variances cancel to rounding, what is left of them is at random; Student's t is long normal there. */
const AS_GOOD_AS_INFINITE = 1e15

/** By what share degrees of freedom differ from those of a row, where null is infinite. */
export function offIn(dof: number, ofRow: number | null): number {
  const [a, b] = [dof, ofRow ?? Infinity].map((x) => Math.min(x, AS_GOOD_AS_INFINITE))
  return Math.abs((a ?? Number.NaN) / (b ?? Number.NaN) - 1)
}

/** A job's own dimension for each calculation: `worked_1`, `worked_2`, … */
export const asDimensions = (all: readonly Calculation[]): object[] =>
  all.map(({ formula, kind }, i) => ({
    name: `worked_${i + 1}`,
    label: formula,
    kind,
    evidence: [{ id: 'd', basis: 'derived', formula }],
  }))

/** What u would come out as if rows had nothing in common. */
export const asIfIndependent = (table: ReadTable, derivatives: Record<string, number>): number =>
  Math.hypot(...Object.entries(derivatives).map(([name, d]) => d * rowOf(table, name).u))

export const rowOf = (table: ReadTable, name: string): ReadTable['rows'][number] => {
  const row = table.rows.find((r) => r.name === name)
  if (row === undefined) throw new Error(`no row ${name}`)
  return row
}
