import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { RowValue } from '../../../../src/core/ledger/table/reach.ts'
import { type TableSources, tableSources } from '../../../../src/core/ledger/table/table-sources.ts'
import { covariance, standardUncertainty } from '../../../../src/core/uncertainty/covariance.ts'
import { effectiveDof } from '../../../../src/core/uncertainty/coverage.ts'
import {
  KNOWN,
  newSource,
  type Source,
  type VarianceEstimate,
} from '../../../../src/core/uncertainty/source.ts'
import { exact, fromTerms, propagate, type Uncertain } from '../../../../src/core/uncertainty/uncertain.ts'
import { combined, readTable } from './documented-reader.ts'

const rowsOf = (values: Record<string, Uncertain | null>, factor = 1): RowValue[] =>
  Object.entries(values).map(([name, adopted]) => ({ name, adopted, factor }))

const of = (values: Record<string, Uncertain | null>): TableSources => tableSources(rowsOf(values))

const scale = newSource('scale of the elevation')
const pick = (label: string, u: number, estimate: VarianceEstimate = KNOWN): [Source, number] => [
  newSource(`picking of ${label}`, estimate),
  u,
]
const value = (...terms: [Source, number][]): Uncertain =>
  fromTerms(
    1,
    terms.map(([source]) => source),
    terms.map(([, u]) => u),
  )

describe('what rows have in common', () => {
  const boss = pick('boss', 0.3)
  const { sources, by } = of({
    length: value([scale, 0.4], boss, pick('left end', 0.3), pick('right end', 0.4)),
    width: value([scale, -0.2], pick('front', 0.1)),
    height: value(boss, pick('foot', 2)),
  })

  it('is a source by itself; what a row has alone is one source of its own', () => {
    expect(sources).toEqual([
      { id: 's1', name: 'scale of the elevation' },
      { id: 's2', name: 'picking of boss' },
      { id: 'own.length', name: 'only in length' },
      { id: 'own.width', name: 'only in width' },
      { id: 'own.height', name: 'only in height' },
    ])
    expect(by).toEqual([
      { s1: 0.4, s2: 0.3, 'own.length': 0.5 },
      { s1: -0.2, 'own.width': 0.1 },
      { s2: 0.3, 'own.height': 2 },
    ])
  })

  it('is in the unit of each row', () => {
    const x = value([scale, 3])
    const inTwo = tableSources([
      { name: 'length', adopted: x, factor: 1 / 25.4 },
      { name: 'area', adopted: x, factor: 1 / 25.4 ** 2 },
    ])
    expect(inTwo.by).toEqual([{ s1: 3 * (1 / 25.4) }, { s1: 3 * (1 / 25.4 ** 2) }])
  })

  it('is nothing where a value is exact or there is none', () => {
    expect(of({ figured: exact(3), open: null, cancelled: value([scale, 0]) })).toEqual({
      sources: [],
      by: [{}, {}, {}],
    })
  })
})

describe('sources that move the same rows in one proportion', () => {
  it('count as one, named for all that is in it', () => {
    const [left, right] = [newSource('picking of left end'), newSource('picking of right end')]
    const length = value([right, -0.4], [left, 0.3])
    const { sources, by } = of({
      length,
      twice: propagate(2, [length], [2]),
      back: propagate(1, [length], [-1]),
    })
    expect(sources).toEqual([{ id: 's1', name: 'picking of left end, picking of right end' }])
    expect(by).toEqual([{ s1: 0.5 }, { s1: 1 }, { s1: -0.5 }])
  })

  it('stay apart where the proportions differ by more than rounding', () => {
    const [a, b] = [newSource('a'), newSource('b')]
    const off = 1e-12
    const apart = of({ one: value([a, 0.3], [b, 0.4]), other: value([a, 0.3], [b, 0.4 * (1 + off)]) })
    expect(apart.sources.map(({ name }) => name)).toEqual(['a', 'b'])
    const rounded = of({ one: value([a, 0.1], [b, 0.7]), other: value([a, 0.1 * 3], [b, 0.1 * 3 * 7]) })
    expect(rounded.sources.map(({ name }) => name)).toEqual(['a, b'])
  })

  it('stay apart where one rests on an estimate of variance, so that degrees of freedom come out right', () => {
    const estimate = { dof: 4 }
    const [x, y] = [newSource('repeated picks', estimate), newSource('repeated picks', estimate)]
    const length = value([scale, 1], [x, 2], pick('end', 2))
    const width = value([scale, 1], [y, 3])
    const { sources } = of({ length, width, twice: propagate(1, [width], [2]) })
    expect(sources).toEqual([
      { id: 's1', name: 'scale of the elevation' },
      { id: 'own.length', name: 'only in length' },
      { id: 'own.length.2', name: 'only in length', dof: 4, estimate: 'own.length.2' },
      { id: 's2', name: 'repeated picks', dof: 4, estimate: 'own.length.2' },
    ])
  })
})

/** Rows over sources that are few, many, shared, proportional, limited: whatever is drawn. Made in the order given. */
interface Plan {
  rows: number
  columns: { label: string; estimate: number; pattern: number; times: number; parts: number[] }[]
}

const part = fc.oneof(
  fc.constant(0),
  fc.double({ min: -3, max: 3, noNaN: true }).filter((x) => Math.abs(x) > 1e-3),
)

const plan: fc.Arbitrary<Plan> = fc.integer({ min: 1, max: 6 }).chain((rows) =>
  fc.record({
    rows: fc.constant(rows),
    columns: fc.array(
      fc.record({
        label: fc.constantFrom('a', 'b', 'c'),
        estimate: fc.integer({ min: 0, max: 3 }),
        pattern: fc.integer({ min: 0, max: 3 }),
        times: fc.double({ min: 0.01, max: 10, noNaN: true }),
        parts: fc.array(part, { minLength: rows, maxLength: rows }),
      }),
      { maxLength: 14 },
    ),
  }),
)

function valuesOf({ rows, columns }: Plan, order: readonly number[]): Record<string, Uncertain> {
  const estimates = [KNOWN, KNOWN, { dof: 3 }, { dof: 7 }]
  const sources = new Map<number, Source>()
  for (const c of order) {
    const column = columns[c]
    if (column) sources.set(c, newSource(column.label, estimates[column.estimate]))
  }
  // Some columns are a multiple of an earlier one.
  const partsOf = (c: number): number[] => {
    const { parts, pattern, times } = columns[c] as Plan['columns'][number]
    return pattern < c && pattern > 0 ? (columns[pattern]?.parts ?? parts).map((x) => x * times) : parts
  }
  return Object.fromEntries(
    Array.from({ length: rows }, (_, r) => [
      `row${r}`,
      fromTerms(
        r,
        columns.map((_, c) => sources.get(c) as Source),
        columns.map((_, c) => partsOf(c)[r] ?? 0),
      ),
    ]),
  )
}

const inOrder = (n: number): number[] => Array.from({ length: n }, (_, i) => i)

/** The same as it comes out of JSON. */
const printedOf = (values: Record<string, Uncertain>) => {
  const { sources, by } = of(values)
  const rows = Object.keys(values).map((name, i) => ({ name, by: by[i] }))
  return readTable(JSON.stringify({ rows, sources }))
}

describe('rows at random', () => {
  it('keep every variance, every covariance, and u and dof of every sum', () => {
    fc.assert(
      fc.property(plan, fc.array(part, { minLength: 6, maxLength: 6 }), (p, weights) => {
        const values = valuesOf(p, inOrder(p.columns.length))
        const names = Object.keys(values)
        const table = printedOf(values)
        const u = names.map((name) => standardUncertainty(values[name] as Uncertain))
        const by = (i: number): Record<string, number> => table.rows[i]?.by ?? {}
        for (let i = 0; i < names.length; i++) {
          for (let j = 0; j <= i; j++) {
            const theirs = Object.entries(by(i)).reduce((sum, [id, c]) => sum + c * (by(j)[id] ?? 0), 0)
            const ours = covariance(values[`row${i}`] as Uncertain, values[`row${j}`] as Uncertain)
            expect(Math.abs(theirs - ours)).toBeLessThanOrEqual(1e-13 * (u[i] ?? 0) * (u[j] ?? 0))
          }
        }
        const derivatives = Object.fromEntries(names.map((name, i) => [name, weights[i] ?? 0]))
        const sum = propagate(
          0,
          Object.values(values),
          names.map((_, i) => weights[i] ?? 0),
        )
        const got = combined(table, derivatives)
        const size = names.reduce((s, _, i) => s + Math.abs(weights[i] ?? 0) * (u[i] ?? 0), 0)
        expect(Math.abs(got.u - standardUncertainty(sum))).toBeLessThanOrEqual(1e-13 * size)
        if (got.u > 1e-3 * size) {
          expect(Math.abs(1 / got.dof - 1 / effectiveDof(sum))).toBeLessThan(1e-9)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('give the same sources, with the same ids, in whatever order they were made', () => {
    fc.assert(
      fc.property(plan, fc.array(fc.nat(), { minLength: 14, maxLength: 14 }), (p, keys) => {
        const straight = inOrder(p.columns.length)
        const mixed = [...straight].sort((a, b) => (keys[a] ?? 0) - (keys[b] ?? 0))
        const [a, b] = [printedOf(valuesOf(p, straight)), printedOf(valuesOf(p, mixed))]
        expect(b.sources).toEqual(a.sources)
        a.rows.forEach((row, i) => {
          const other = b.rows[i]?.by ?? {}
          expect(Object.keys(other)).toEqual(Object.keys(row.by))
          for (const [id, c] of Object.entries(row.by)) expect(other[id]).toBeCloseTo(c, 12)
        })
      }),
      { numRuns: 500 },
    )
  })
})
