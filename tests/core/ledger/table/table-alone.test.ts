import { describe, expect, it } from 'vitest'
import { tableJson } from '../../../../src/core/handoff/table/table-json.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { randomStream } from '../../../../src/core/uncertainty/random.ts'
import { largeJob } from '../../../bench/large-job.ts'
import {
  asDimensions,
  asIfIndependent,
  combined,
  offIn,
  type ReadTable,
  readTable,
  rowOf,
  someCalculations,
} from './documented-reader.ts'
import { sharingJob } from './sharing-job.ts'

const JOBS = 40
const EACH = 50

const tableOf = (job: Job): ReadTable => readTable(tableJson(dimensionTable(job)))

describe(`${JOBS} jobs at random whose rows share marks, references, calipers and one another`, () => {
  const jobs = Array.from({ length: JOBS }, (_, seed) => sharingJob(seed + 1))
  const tables = jobs.map(tableOf)

  it('are of every kind: fitting, enlarged, with a reference set aside, with limited degrees of freedom', () => {
    const views = jobs.flatMap((job) => dimensionTable(job).views)
    expect(views.every((v) => Object.keys(v.parameters).length > 0)).toBe(true)
    expect(views.filter((v) => v.references.some((r) => r.setAside)).length).toBeGreaterThan(3)
    expect(views.filter((v) => v.problemReason?.code === 'misfit.enlarged').length).toBeGreaterThan(3)
    expect(tables.filter(({ sources }) => sources.some((s) => s.dof !== undefined)).length).toBeGreaterThan(
      30,
    )
  })

  it(`give u and dof of ${JOBS * EACH} calculations with two rows by their JSON alone`, () => {
    let [worst, worstDof, correlated, refused, curved, less] = [0, 0, 0, 0, 0, 0]
    jobs.forEach((job, j) => {
      const table = tables[j] as ReadTable
      const all = someCalculations(table, EACH, randomStream(j + 1).uniform)
      const own = tableOf(readJob({ ...job, dimensions: [...job.dimensions, ...asDimensions(all)] }))
      all.forEach(({ derivatives }, i) => {
        const row = rowOf(own, `worked_${i + 1}`)
        const { u, dof } = combined(table, derivatives)
        // Where first order does not hold, what an outside program works out by it is at most what the row says.
        if (row.value === null) refused++
        else if (row.interval !== undefined) {
          curved++
          less = Math.max(less, u / row.u - 1)
        }
        if (row.value === null || row.interval !== undefined) return
        worst = Math.max(worst, Math.abs(u / row.u - 1))
        worstDof = Math.max(worstDof, offIn(dof, row.dof))
        if (Math.abs(asIfIndependent(table, derivatives) / row.u - 1) > 0.01) correlated++
      })
    })
    console.log(
      `${JOBS * EACH} calculations with rows of ${JOBS} jobs: u off by ${worst.toExponential(1)} at most, ` +
        `dof by ${worstDof.toExponential(1)}; ${correlated} would be off by more than 1 % without correlations`,
    )
    console.log(`first order does not hold for ${curved} of them, and ${refused} have no sure value`)
    expect(worst).toBeLessThan(1e-9)
    expect(less).toBeLessThan(1e-9)
    expect(refused + curved).toBeLessThan((JOBS * EACH) / 8)
    expect(worstDof).toBeLessThan(1e-9)
    expect(correlated).toBeGreaterThan((JOBS * EACH) / 4)
  })

  it('give u of a length times the sine of an angle, whose derivative is by the degree', () => {
    jobs.forEach((job, j) => {
      const table = tables[j] as ReadTable
      const [length, angle] = ['d1', 'd12'].map((name) => rowOf(table, name).value ?? Number.NaN)
      const radians = ((angle ?? 0) * Math.PI) / 180
      const formula = 'd1 * sin(d12)'
      const own = tableOf(
        readJob({
          ...job,
          dimensions: [...job.dimensions, ...asDimensions([{ formula, kind: 'length', derivatives: {} }])],
        }),
      )
      const derivatives = {
        d1: Math.sin(radians),
        d12: ((length ?? 0) * Math.cos(radians) * Math.PI) / 180,
      }
      const row = rowOf(own, 'worked_1')
      const ratio = combined(table, derivatives).u / row.u
      if (row.interval === undefined) expect(ratio).toBeCloseTo(1, 9)
      else expect(ratio).toBeLessThan(1 + 1e-9)
    })
  })

  it('have in each row u² = Σ by², and the dof of it', () => {
    for (const table of tables) {
      for (const { name, u, dof, by } of table.rows) {
        const own = combined(table, { [name]: 1 })
        expect(Math.abs(own.u ** 2 - u ** 2)).toBeLessThanOrEqual(1e-14 * u ** 2)
        expect(offIn(own.dof, dof)).toBeLessThan(1e-12)
        expect(Object.keys(by).length > 0).toBe(u > 0)
      }
    }
  })
})

describe('a large job that is scaled all through', () => {
  const job = largeJob(600)
  const table = dimensionTable({ ...job, dimensions: job.dimensions.map((d) => ({ ...d, adopt: 'scaled' })) })

  it('has for each row one source of its own and one for each reference of its view, not one for each coordinate', () => {
    const references = Math.max(...job.views.map((v) => v.references.length))
    for (const { by } of table.rows) expect(Object.keys(by).length).toBeLessThanOrEqual(1 + references)
    expect(table.sources.length).toBeLessThanOrEqual(table.rows.length + references * job.views.length)
  })

  it('has JSON that is larger by less than a tenth for it', () => {
    const without = { ...table, sources: [], rows: table.rows.map((row) => ({ ...row, by: {} })) }
    expect(tableJson(table).length / tableJson(without).length).toBeLessThan(1.1)
  })
})
