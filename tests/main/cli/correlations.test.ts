import { cp, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import {
  asDimensions,
  asIfIndependent,
  CORRELATIONS,
  combined,
  offIn,
  type ReadTable,
  readTable,
  rowOf,
  someCalculations,
} from '../../core/ledger/table/documented-reader.ts'
import { scantling } from '../fixtures/command-line.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'

const SAMPLE = 'samples/deck-ventilator'

/** What `table --format json` prints, and nothing else. */
async function tableOf(folder: string): Promise<ReadTable> {
  const { code, stdout } = await scantling('table', folder, '--format', 'json')
  expect(code).toBe(0)
  return readTable(stdout)
}

let sample: ReadTable
beforeAll(async () => {
  sample = await tableOf(SAMPLE)
})

/** A copy of the sample with more dimensions. */
async function sampleWith(more: readonly object[]): Promise<string> {
  const folder = join(await temporaryFolder(), 'ventilator')
  await cp(SAMPLE, folder, { recursive: true })
  const file = join(folder, 'job.json')
  const job = JSON.parse(await readFile(file, 'utf8'))
  await writeFile(file, JSON.stringify({ ...job, dimensions: [...job.dimensions, ...more] }))
  return folder
}

describe('from the printed table of the sample alone, by the reader that the documents print', () => {
  test('u and dof of 400 sums, differences, products and ratios of rows are those of the program', async () => {
    const all = someCalculations(sample, 400, randomStream(7).uniform)
    const own = await tableOf(await sampleWith(asDimensions(all)))
    let worst = 0
    let correlated = 0
    let curved = 0
    all.forEach(({ derivatives }, i) => {
      const row = rowOf(own, `worked_${i + 1}`)
      const { u, dof } = combined(sample, derivatives)
      if (row.interval !== undefined) {
        // Where first order does not hold, what an outside program works out by it is at most what the row says.
        curved++
        expect(u / row.u).toBeLessThan(1 + 1e-9)
        return
      }
      worst = Math.max(worst, Math.abs(u / row.u - 1), offIn(dof, row.dof))
      if (Math.abs(asIfIndependent(sample, derivatives) / row.u - 1) > 0.01) correlated++
    })
    console.log(
      `${all.length} calculations with rows of the sample: u and dof off by ${worst.toExponential(1)} at most; ` +
        `${correlated} of them would be off by more than 1 % without correlations`,
    )
    expect(worst).toBeLessThan(1e-9)
    expect(curved).toBeLessThan(all.length / 8)
    expect(correlated).toBeGreaterThan(40)
  })

  test('the gasket and its bore together are the face of the flange, whose figure is printed: exact', () => {
    const { value: bore } = rowOf(sample, 'flange_bore')
    const derivatives = { gasket_area: 1, flange_bore: (Math.PI / 2) * (bore ?? Number.NaN) }
    expect(asIfIndependent(sample, derivatives)).toBeGreaterThan(0.2)
    expect(combined(sample, derivatives).u).toBeLessThan(1e-12)
  })

  test('every row has its own u and dof', () => {
    for (const { name, u, dof } of sample.rows) {
      const own = combined(sample, { [name]: 1 })
      expect(Math.abs(own.u - u)).toBeLessThanOrEqual(1e-15 * u)
      expect(offIn(own.dof, dof)).toBeLessThan(1e-12)
    }
  })
})

describe('the case that the documents work out', () => {
  test('is that of the sample', () => {
    const [area, bore] = [rowOf(sample, 'gasket_area'), rowOf(sample, 'flange_bore')]
    const [a, b] = [area.value ?? Number.NaN, bore.value ?? Number.NaN]
    const f = a / b
    const derivatives = { gasket_area: 1 / b, flange_bore: -f / b }
    const figures = (x: number): string => x.toPrecision(4).replace('-', '−').padStart(14)
    const line = (head: string, ...numbers: number[]): string =>
      `${head.padEnd(7)}${numbers.map(figures).join('')}`.trimEnd()
    const shared = sample.sources.filter(({ id }) => id in area.by || id in bore.by)
    const both = shared.map(({ id }) => {
      const [byA, byB] = [area.by[id] ?? 0, bore.by[id] ?? 0]
      return line(id, byA, byB, (byA - f * byB) / b)
    })
    const worked = [
      `${''.padEnd(7)}${['gasket_area', 'flange_bore', 'a / b'].map((head) => head.padStart(14)).join('')}`,
      line('value', a, b, f),
      ...both,
      line('u', area.u, bore.u, combined(sample, derivatives).u),
    ]
    const { u } = combined(sample, derivatives)
    const apart = asIfIndependent(sample, derivatives)
    expect(CORRELATIONS).toContain(['```', ...worked, '```'].join('\n'))
    expect(CORRELATIONS).toContain(
      `So a / b is ${f.toFixed(3)} in with u ${u.toFixed(3)} in. As if the two had nothing in common it would be ${apart.toFixed(3)} in, ` +
        `${Math.round(100 * (1 - apart / u))} % too small.`,
    )
  })
})
