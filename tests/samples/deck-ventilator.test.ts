import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import sharp from 'sharp'
import { beforeAll, describe, expect, it } from 'vitest'
import { makeJob, SAMPLE_SEED, type Truth } from '../../samples/draw/make-job.ts'
import type { Job, Measure } from '../../src/core/job/model/types.ts'
import { writeJob } from '../../src/core/job/write-job.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import type { Table } from '../../src/core/ledger/table/table.ts'
import { JOB, SCAN, sampleJob, sampleTruth } from './sample-files.ts'
import { held, scaledErrors } from './scaled-errors.ts'

let job: Job
let truth: Truth
let table: Table

beforeAll(async () => {
  job = await sampleJob()
  truth = await sampleTruth()
  table = dimensionTable(job)
})

const row = (name: string) => {
  const found = table.rows.find((r) => r.name === name)
  if (found === undefined) throw new Error(`The table has no row ${name}.`)
  return found
}

/** Probability of k or more of n when each happens with probability p (binomial distribution). */
function chanceOfAtLeast(k: number, n: number, p: number): number {
  let term = (1 - p) ** n
  let below = 0
  for (let i = 0; i < k; i++) {
    below += term
    term *= (((n - i) / (i + 1)) * p) / (1 - p)
  }
  return 1 - below
}

describe('the files of the deck ventilator', () => {
  it('name the scan by the hash of its bytes', async () => {
    const hash = createHash('sha256')
      .update(await readFile(SCAN))
      .digest('hex')
    expect(job.sheets[0]?.scan.sha256).toBe(hash)
  })

  it('hold a scan of the size and resolution that the job states, and of a few megabytes at most', async () => {
    const scan = job.sheets[0]?.scan
    const { width, height, density } = await sharp(SCAN).metadata()
    expect({ width, height, density }).toEqual({
      width: scan?.width,
      height: scan?.height,
      density: scan?.dpi,
    })
    expect((await readFile(SCAN)).length).toBeLessThan(3e6)
  })

  it('come again byte for byte from the same seed', async () => {
    const sha256 = job.sheets[0]?.scan.sha256
    const again = makeJob(SAMPLE_SEED, sha256)
    expect(writeJob(again.job)).toBe(await readFile(JOB, 'utf8'))
    expect(JSON.parse(JSON.stringify(again.truth))).toEqual(truth)
  })

  it('differ from those of another seed in the picks', () => {
    expect(makeJob(SAMPLE_SEED + 1).job.marks).not.toEqual(job.marks)
  })

  it('keep the true values out of the job', async () => {
    const text = await readFile(JOB, 'utf8')
    expect(text).not.toMatch(/truth|seed/i)
  })
})

describe('the sheet of the deck ventilator', () => {
  it('has ink where its points and lines were picked', async () => {
    const { data, info } = await sharp(SCAN).greyscale().raw().toBuffer({ resolveWithObject: true })
    const grey = (x: number, y: number) => data[y * info.width + x] ?? 255
    const around = (x: number, y: number, reach: number) => {
      const values: number[] = []
      for (let j = -reach; j <= reach; j++) {
        for (let i = -reach; i <= reach; i++) values.push(grey(Math.floor(x) + i, Math.floor(y) + j))
      }
      return values.sort((a, b) => a - b)
    }
    const median = (values: number[]) => values[Math.floor(values.length / 2)] ?? Number.NaN
    // How much darker than the ground within 25 pixels is the place itself?
    const darkness = (x: number, y: number) => {
      const ground = median(around(x, y, 25))
      return (ground - median(around(x, y, 1))) / ground
    }
    const marks = job.marks.filter(({ kind }) => kind === 'point' || kind === 'line')
    const inked = marks.map(({ id }) =>
      median((truth.marks[id] ?? []).map(([x, y]) => darkness(x, y)).sort((a, b) => a - b)),
    )
    // A lattice that has nothing to do with the drawing.
    const elsewhere: number[] = []
    for (let y = 211; y < 3200; y += 97) {
      for (let x = 233; x < 5000; x += 101) elsewhere.push(darkness(x, y))
    }
    elsewhere.sort((a, b) => a - b)
    const typical = elsewhere[Math.floor(0.9 * elsewhere.length)] ?? Number.NaN
    const faintest = Math.min(...inked)
    console.log(
      `ink at ${marks.length} marks: ${faintest.toFixed(2)} or more darker than the ground; ` +
        `at nine of ten of ${elsewhere.length} other places at most ${typical.toFixed(3)}`,
    )
    expect(marks.length).toBeGreaterThan(40)
    expect(faintest).toBeGreaterThan(0.15)
    expect(typical).toBeLessThan(0.05)
  })

  it('was picked within five sigmas of where the ink lies', () => {
    for (const mark of job.marks) {
      const exact = truth.marks[mark.id] ?? []
      const picks = mark.kind === 'point' ? [mark.pixel] : mark.pixels
      expect(picks.length).toBe(exact.length)
      picks.forEach(([x, y], i) => {
        const [tx, ty] = exact[i] ?? [Number.NaN, Number.NaN]
        expect(Math.hypot(x - tx, y - ty)).toBeLessThan(5 * mark.sigma)
      })
    }
  })

  it('is shared between two people and uses every measure but those of a slot, and all four bases', () => {
    const evidence = job.dimensions.flatMap((d) => d.evidence)
    const measures = new Set(evidence.flatMap((e) => (e.basis === 'scaled' ? [e.measure] : [])))
    const all: Measure[] = ['distance', 'spacing', 'diameter', 'radius', 'centres', 'angle', 'run', 'area']
    expect([...measures].sort()).toEqual([...all].sort())
    expect(new Set(evidence.map((e) => e.basis))).toEqual(new Set(['printed', 'scaled', 'found', 'derived']))
    expect(new Set(job.marks.map(({ by }) => by))).toEqual(new Set(job.people.map(({ id }) => id)))
  })
})

describe('the table of the deck ventilator', () => {
  it('holds the truth in as many scaled rows as 95 % promises', () => {
    const errors = scaledErrors(table, truth)
    const missed = errors.filter((e) => !held(e))
    console.log(
      `scaled values within U: ${errors.length - missed.length} of ${errors.length}` +
        ` (outside: ${missed.map(({ name }) => name).join(', ') || 'none'})`,
    )
    expect(errors.length).toBeGreaterThan(20)
    // More misses than this would happen on fewer than one sheet in two hundred.
    expect(chanceOfAtLeast(missed.length, errors.length, 0.05)).toBeGreaterThan(0.005)
  })

  it('adopts the true value of every clear printed figure but the misprint', () => {
    for (const { name, basis, value, kind } of table.rows) {
      if (basis !== 'printed' || name === truth.misprint.dimension) continue
      const known = truth.dimensions[name]
      expect(value, name).toBeCloseTo((known?.value ?? Number.NaN) / (kind === 'length' ? 25.4 : 1), 9)
    }
  })

  it('disputes the misprinted neck and nothing else', () => {
    expect(table.rows.filter(({ status }) => status === 'disputed').map(({ name }) => name)).toEqual([
      truth.misprint.dimension,
    ])
    const scaled = row(truth.misprint.dimension).evidence.find(({ basis }) => basis === 'scaled')
    expect(scaled?.en).toBeGreaterThan(3)
  })

  it('does not adopt the smudged figure by itself', () => {
    expect(row(truth.smudged.dimension).basis).not.toBe('printed')
  })

  it('names the misread figured size by its figure, sets it aside, and names no other', () => {
    const { view, id } = truth.badReference
    const asides = table.views.flatMap((v) =>
      v.references.filter(({ setAside }) => setAside).map((r) => `${v.id} ${r.id}`),
    )
    expect(asides).toEqual([`${view} ${id}`])
    const problem = table.views.find((v) => v.id === view)?.problem ?? ''
    const references = job.views.find((v) => v.id === view)?.references ?? []
    const named = references.filter((one) =>
      problem.includes(one.kind === 'rectangle' ? ` ${one.width} ` : ` ${one.size} `),
    )
    expect(named.map((one) => one.id)).toEqual([id])
    const suspects = table.views.flatMap((v) =>
      v.references.filter(({ suspect }) => suspect).map((r) => `${v.id} ${r.id}`),
    )
    expect(suspects).toEqual([`${view} ${id}`])
  })

  it('breaks the sum that the misprint enters and holds the others', () => {
    expect(table.relations.length).toBeGreaterThan(1)
    for (const { id, holds } of table.relations) expect(holds, id).toBe(id !== truth.brokenRelation)
  })

  it('finds the plan drawn out of its scale and the sheet shrunk by different amounts each way', () => {
    const { pixelsPerMmAlong, pixelsPerMmAcross } = truth.distortion
    for (const view of table.views) {
      const drawn = truth.scales[view.id]?.drawn ?? Number.NaN
      const { along, across } = view.parameters
      for (const [found, perMm] of [
        [along, pixelsPerMmAlong],
        [across, pixelsPerMmAcross],
      ] as const) {
        // The table of an inch job states inches of the part a pixel.
        const value = 25.4 * (found?.value ?? Number.NaN)
        const u = 25.4 * (found?.u ?? 0)
        expect(Math.abs(value - 1 / (perMm * drawn))).toBeLessThan(3.3 * u)
      }
    }
  })

  it('withdraws evidence without losing it', () => {
    const withdrawn = row('bolt_circle').evidence.find(({ problem }) => problem?.startsWith('Withdrawn'))
    expect(withdrawn?.value).toBeNull()
  })
})
