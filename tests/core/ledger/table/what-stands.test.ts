import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { describe, expect, it } from 'vitest'
import { applyEdit, type Edit, readEdit } from '../../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { assess } from '../../../../src/core/ledger/assessment/assessment.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import type { Table } from '../../../../src/core/ledger/table/table.ts'
import { largeJob } from '../../../bench/large-job.ts'
import { withMintedIds } from './minted-ids.ts'
import { differsAt } from './same-bits.ts'
import { sharingJob } from './sharing-job.ts'

const edited = (job: Job, edit: object): Job => applyEdit(job, readEdit(edit as Edit)).job

/**
 * The rows of a table that were worked out anew, by name. Of the others only the numbers of the sources may be new: they
 * are counted through the whole table.
 */
const anew = (now: Table, was: Table): string[] => {
  const before = new Set(was.rows.map(({ evidence }) => evidence))
  return now.rows.filter(({ evidence }) => !before.has(evidence)).map(({ name }) => name)
}

/** 100 dimensions: six in ten and two in ten of two marks, two in ten of circles, each tenth the mean of two others. */
const job = readJob(JSON.parse(JSON.stringify(largeJob(100))))
const table = dimensionTable(job)

const scaledOf = (job: Job, name: string) => {
  const one = job.dimensions.find((d) => d.name === name)?.evidence.find(({ basis }) => basis === 'scaled')
  if (one?.basis !== 'scaled') throw new RangeError(`${name} is not scaled.`)
  return one
}

describe('after one edit', () => {
  it('only the dimension whose evidence it is, and what is worked out from it, is worked out anew', () => {
    const edit = { do: 'add-evidence', dimension: 'd32', item: { id: 'n', basis: 'printed', text: '3 1/2"' } }
    const now = dimensionTable(edited(job, edit), { before: table })
    // d33 is the mean of d32 and d22, and d43 that of d42 and d32.
    expect(anew(now, table)).toEqual(['d32', 'd33', 'd43'])
  })

  it('only what is measured by a mark is worked out anew when the mark is picked again', () => {
    const [mark] = scaledOf(job, 'd50').marks
    const now = dimensionTable(edited(job, { do: 'repeat-pick', mark, pixel: [10, 20] }), { before: table })
    expect(anew(now, table)).toEqual(['d50'])
  })

  it('all that is measured through a view is worked out anew when a size of it changes', () => {
    const sized = largeJob(1000)
    const whole = readJob(JSON.parse(JSON.stringify(sized)))
    const before = dimensionTable(whole)
    const edit = { do: 'change-reference', view: 'V2', id: 'R1', set: { size: '300.5 mm' } }
    const changed = edited(whole, edit)
    const now = dimensionTable(changed, { before })
    const through = new Set(
      changed.dimensions.filter((d) => scaledOf(changed, d.name).view === 'V2').map(({ name }) => name),
    )
    // In the order of the job: a formula of it uses only what stands before.
    for (const { name, evidence } of changed.dimensions) {
      const formula = evidence.map((one) => (one.basis === 'derived' ? one.formula : '')).join()
      if ([...through].some((used) => new RegExp(`\\b${used}\\b`).test(formula))) through.add(name)
    }
    // Why a dimension is what it is tells whether the relations that it stands in close.
    const related = changed.relations.flatMap(({ text }) => {
      const names = text.match(/\bd\d+\b/g) ?? []
      return names.some((name) => through.has(name)) ? names : []
    })
    expect(new Set(anew(now, before))).toEqual(new Set([...through, ...related]))
    expect(through.size).toBeLessThan(600)
    expect(now.views[0]).toBe(before.views[0])
    expect(now.views[1]).not.toBe(before.views[1])
    expect(differsAt(now, dimensionTable(changed))).toBeNull()
  })

  it('nothing is worked out anew when nothing that counts has changed', () => {
    const edit = { do: 'add-note', item: { id: 'N1', sheet: 'S1', outline: [[1, 1]], text: 'A rivet.' } }
    const now = dimensionTable(edited(job, edit), { before: table })
    expect(anew(now, table)).toEqual([])
    expect(now.views[0]).toBe(table.views[0])
  })

  it('in another unit, or by other conventions, all of it is', () => {
    expect(anew(dimensionTable(job, { unit: 'mm', before: table }), table)).toHaveLength(100)
    const tolerant = edited(job, { do: 'describe', set: { tolerance: '1/64"' } })
    const now = dimensionTable(tolerant, { before: table })
    expect(anew(now, table)).toHaveLength(100)
    expect(differsAt(now, dimensionTable(tolerant))).toBeNull()
  })

  it('every figure of whole inches or sixteenths counts as finer once sixty-fourths are in use, and no longer after that', () => {
    const fine = (i: number) => ({ id: `n${i}`, basis: 'printed', text: `${i + 1} 1/64"` })
    let [now, last] = [job, table]
    const steps = [
      ...Array.from({ length: 12 }, (_, i) => ({ do: 'add-evidence', dimension: `d${i}`, item: fine(i) })),
      ...Array.from({ length: 12 }, (_, i) => ({
        do: 'withdraw-evidence',
        dimension: `d${i}`,
        id: `n${i}`,
        why: 'misread',
      })),
    ]
    let all = 0
    for (const step of steps) {
      now = edited(now, step)
      const next = dimensionTable(now, { before: last })
      expect(differsAt(next, dimensionTable(now))).toBeNull()
      if (anew(next, last).length === 100) all++
      last = next
    }
    expect(all).toBe(2)
  })

  it('a table that a program has read or copied is as good as none', () => {
    const copy = structuredClone(table)
    expect(differsAt(dimensionTable(job, { before: copy }), table)).toBeNull()
  })
})

describe('a table', () => {
  it('is given of a job whose things have fields that only other things know', () => {
    const foreign = { evidence: [], name: 'x', references: 1, kind: 'point' }
    const strange = readJob({
      ...JSON.parse(JSON.stringify(job)),
      views: job.views.map((view) => ({ ...view, evidence: [] })),
      instruments: job.instruments.map((one) => ({ ...one, evidence: 'of its calibration' })),
      marks: job.marks.map((mark) => ({ ...mark, name: foreign.name, evidence: foreign.evidence })),
    })
    expect(differsAt(dimensionTable(strange).rows, table.rows)).toBeNull()
  })

  it('is of the job as it is, though a program changed the lists of the job in place', () => {
    const own: Job = structuredClone(job)
    const first = dimensionTable(own)
    const [mark] = scaledOf(own, 'd50').marks
    const at = own.marks.findIndex(({ id }) => id === mark)
    own.marks[at] = { ...own.marks[at], pixel: [10, 20], picks: undefined } as unknown as Job['marks'][number]
    expect(dimensionTable(own).rows[50]?.evidence).not.toEqual(first.rows[50]?.evidence)
    expect(differsAt(dimensionTable(own), dimensionTable(structuredClone(own)))).toBeNull()
  })
})

/** The same with a figure that no scale agrees with, at every third length. */
const contradicted = (job: Job): Job => ({
  ...job,
  dimensions: job.dimensions.map((d, i) =>
    d.kind !== 'length' || i % 3 !== 0
      ? d
      : { ...d, evidence: [...d.evidence, { id: 'q', basis: 'printed', text: '9 m' }] },
  ),
})

describe('what stands', () => {
  it('names evidence and figured sizes by their own dimension and view, though others go by the same ids', () => {
    let named = 0
    for (let seed = 1; seed <= 24; seed++) {
      // All evidence with one id there has one minted id here, in each dimension with a number of its own.
      const plain = withMintedIds(contradicted(sharingJob(seed)), seed)
      const numbered: Job = {
        ...plain,
        dimensions: plain.dimensions.map((d, i) => ({
          ...d,
          evidence: d.evidence.map((e, n) => ({ ...e, number: 10 * i + n + 1 })),
        })),
      }
      const before = dimensionTable(numbered)
      for (const [i, row] of before.rows.entries()) {
        const own = new Set(row.evidence.map(({ label }) => label))
        for (const { names } of row.whyReasons) {
          for (const [id, label] of Object.entries(names ?? {})) {
            if (!id.startsWith('e-')) continue
            expect(own.has(label), `${label} of row ${i}`).toBe(true)
            named++
          }
        }
      }
      const last = numbered.dimensions.length - 1
      const renumbered: Job = {
        ...numbered,
        dimensions: numbered.dimensions.map((d, i) =>
          i === last ? { ...d, evidence: d.evidence.map((e) => ({ ...e, number: 999 })) } : d,
        ),
      }
      expect(differsAt(dimensionTable(renumbered, { before }), dimensionTable(renumbered))).toBeNull()
    }
    expect(named).toBeGreaterThan(5)
  })

  it('is called as it is now, though its label alone has changed', () => {
    let changes = 0
    for (let seed = 1; seed <= 12; seed++) {
      const before = withMintedIds(sharingJob(seed), seed)
      const first = dimensionTable(before)
      const numbered = (kind: 'views' | 'marks' | 'instruments' | 'relations', i: number): Job => ({
        ...before,
        [kind]: before[kind].map((item, k) =>
          k % 5 === i
            ? { ...item, number: 70 + k, ...(kind === 'instruments' ? { name: 'Rule' } : {}) }
            : item,
        ),
      })
      const evidence: Job = {
        ...before,
        dimensions: before.dimensions.map((d, k) =>
          k % 3 === 0 ? { ...d, evidence: d.evidence.map((e, n) => ({ ...e, number: n + 1 })) } : d,
        ),
      }
      const kinds = ['views', 'marks', 'instruments', 'relations'] as const
      for (const now of [evidence, ...kinds.flatMap((kind) => [0, 1, 2].map((i) => numbered(kind, i)))]) {
        const whole = dimensionTable(now)
        expect(differsAt(dimensionTable(now, { before: first }), whole)).toBeNull()
        if (differsAt(whole, first) !== null) changes++
      }
    }
    expect(changes).toBeGreaterThan(50)
  })

  it('is found where things come between others, again and again, go, and come back', () => {
    let [now, last] = [job, table]
    const make = (name: string, i: number) => ({
      name,
      label: name,
      kind: 'length',
      evidence: [scaledOf(job, `d${i}`)],
    })
    for (let i = 0; i < 12; i++) {
      // Always at one place, so that the room between its neighbours is used up.
      now = edited(now, { do: 'add-dimension', item: make(`x${i}`, 2 * i), index: 41 })
      const next = dimensionTable(now, { before: last })
      expect(differsAt(next, dimensionTable(now))).toBeNull()
      last = next
    }
    for (let i = 0; i < 12; i++) {
      now = edited(now, { do: 'remove-dimension', name: `x${i}`, undo: true })
      const next = dimensionTable(now, { before: last })
      expect(differsAt(next, dimensionTable(now))).toBeNull()
      expect(anew(next, last).length).toBeLessThan(10)
      last = next
    }
    expect(differsAt(last, table)).toBeNull()
  })

  it('does not hold on to what it was worked out beside, long ago', async () => {
    setFlagsFromString('--expose-gc')
    const collect = runInNewContext('gc') as () => void
    const old: WeakRef<object>[] = []
    let [now, last] = [job, assess(job)]
    for (let i = 0; i < 60; i++) {
      // Derived dimensions, measured ones and those of readings, each worked out in another assessment.
      const dimension = ['d33', 'd43', 'd50', 'd61', 'd5'][i % 5]
      const item = { id: `n${i}`, basis: 'found', instrument: 'I1', readings: [`${100 + i / 100} mm`] }
      now = edited(now, { do: 'add-evidence', dimension, item })
      last = assess(now, {}, last)
      for (const held of [last, last.features, last.dimensions, last.consulted, last.views]) {
        old.push(new WeakRef(held))
      }
    }
    // What was looked at in this turn is held until the next.
    await new Promise((done) => setTimeout(done, 0))
    collect()
    expect(old.slice(0, -5).filter((ref) => ref.deref() !== undefined)).toEqual([])
    expect(old.at(-5)?.deref()).toBe(last)
  })
})
