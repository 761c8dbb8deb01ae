import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { applyEdit, type Edit } from '../../../../src/core/job/edits/edit.ts'
import { addSlot, type NamedSlotSize, trySlotEnds } from '../../../../src/core/job/from-picks/add-slot.ts'
import type { Made } from '../../../../src/core/job/from-picks/picked-mark.ts'
import type { Job } from '../../../../src/core/job/model/types.ts'
import { readJob } from '../../../../src/core/job/read-job.ts'
import { writeJob } from '../../../../src/core/job/write-job.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import type { TableRow } from '../../../../src/core/ledger/table/table.ts'
import { type RandomStream, randomStream } from '../../../../src/core/uncertainty/random.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { seededMint } from '../ids/seeded-mint.ts'
import { FIGURED, foundEnd, PER_MM, placesOnEnd, slotJob } from './slot-job.ts'

const mint = seededMint(31)
const TWENTY = (20 * Math.PI) / 180
const SIGMA = 0.4

/** Of a slot 12 mm wide, 42 mm over all, tilted by 20°: pixels. */
const RADIUS = 6 * PER_MM
const HALF = 15 * PER_MM
const END = (sense: 1 | -1): Pixel =>
  pixel(900 + sense * HALF * Math.cos(TWENTY), 600 + sense * HALF * Math.sin(TWENTY))
const places = (sense: 1 | -1, radius = RADIUS): Pixel[] =>
  placesOnEnd(END(sense), radius, sense === 1 ? TWENTY : TWENTY + Math.PI)

const ALL: NamedSlotSize[] = [
  { size: 'width', name: 'slot_width', label: 'Slot, width' },
  { size: 'length', name: 'slot_length', label: 'Slot, length over all' },
  { size: 'centres', name: 'slot_centres', label: 'Slot, between centres' },
]

const picked = (other = RADIUS) => ({
  view: 'V1',
  ends: [foundEnd(places(-1), SIGMA), foundEnd(places(1, other), SIGMA)],
})

function edited(job: Job, made: Made): { job: Job; edit: Edit } {
  if ('refused' in made) throw new Error(inWords(made.refused))
  return { job: applyEdit(job, made.edit).job, edit: made.edit }
}

const withSlot = (sizes = ALL, count = 1): Job =>
  edited(slotJob(), addSlot(slotJob(), picked(), { label: 'Slot', count, sizes }, mint)).job

function rowOf(job: Job, name: string): TableRow {
  const row = dimensionTable(job).rows.find((one) => one.name === name)
  if (row === undefined) throw new Error(`no row ${name}`)
  return row
}

/** Circle by Gauss–Newton on the distances, from a circle near it; written here, and not as the program has it. */
function circleOf(points: readonly Pixel[], start: readonly [number, number, number]): number[] {
  const [x0, y0, r0] = start
  let cx = x0
  let cy = y0
  let r = r0
  for (let round = 0; round < 4; round++) {
    const normal = [0, 0, 0, 0, 0, 0]
    const right = [0, 0, 0]
    for (const [x, y] of points) {
      const far = Math.hypot(x - cx, y - cy)
      const row = [(x - cx) / far, (y - cy) / far, 1] as const
      const miss = far - r
      let k = 0
      for (let i = 0; i < 3; i++) {
        right[i] = (right[i] ?? 0) + (row[i] ?? 0) * miss
        for (let j = i; j < 3; j++) normal[k] = (normal[k++] ?? 0) + (row[i] ?? 0) * (row[j] ?? 0)
      }
    }
    const [a, b, c, d, e, f] = normal as [number, number, number, number, number, number]
    const [p, q, s] = right as [number, number, number]
    // Cramer's rule.
    const det = (m: readonly number[]): number => {
      const [m1, m2, m3, m4, m5, m6, m7, m8, m9] = m as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ]
      return m1 * (m5 * m9 - m6 * m8) - m2 * (m4 * m9 - m6 * m7) + m3 * (m4 * m8 - m5 * m7)
    }
    const whole = det([a, b, c, b, d, e, c, e, f])
    cx += det([p, b, c, q, d, e, s, e, f]) / whole
    cy += det([a, p, c, b, q, e, c, s, f]) / whole
    r += det([a, b, p, b, d, q, c, e, s]) / whole
  }
  return [cx, cy, r]
}

/** Width, length over all and between centres, mm, as one draw of all picks makes them. */
function drawn(random: RandomStream): [number, number, number] {
  const moved = (at: readonly [number, number], sigma: number): Pixel =>
    pixel(at[0] + sigma * random.normal(), at[1] + sigma * random.normal())
  const [from, to] = [moved(FIGURED.from, FIGURED.sigma), moved(FIGURED.to, FIGURED.sigma)]
  const mm = FIGURED.mm / Math.hypot(to[0] - from[0], to[1] - from[1])
  const end = (sense: 1 | -1): number[] =>
    circleOf(
      places(sense).map((place) => moved(place, SIGMA)),
      [END(sense)[0], END(sense)[1], RADIUS],
    )
  const [ax, ay, ar] = end(-1) as [number, number, number]
  const [bx, by, br] = end(1) as [number, number, number]
  const [width, centres] = [ar + br, Math.hypot(bx - ax, by - ay)]
  return [width * mm, (centres + width) * mm, centres * mm]
}

const deviation = (values: readonly number[]): number => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1))
}

describe('a slot that was picked by its two ends', () => {
  it('is as wide, as long over all and as far between its centres as it was drawn, and all of that closes', () => {
    const table = dimensionTable(withSlot())
    const [width, length, centres] = table.rows
    expect(width?.value).toBeCloseTo(12, 6)
    expect(length?.value).toBeCloseTo(42, 6)
    expect(centres?.value).toBeCloseTo(30, 6)
    // What rows have by a source is what they share: nothing at all is left of length less width less centres.
    const sources = new Set(table.rows.flatMap(({ by }) => Object.keys(by)))
    expect(sources.size).toBeGreaterThan(0)
    for (const source of sources) {
      const [w, l, c] = table.rows.map(({ by }) => by[source] ?? 0)
      expect((l ?? 0) - (w ?? 0) - (c ?? 0)).toBeCloseTo(0, 12)
    }
  })

  it('is as sure in each size as drawing all of its picks anew makes it (Monte Carlo)', () => {
    const job = withSlot()
    const random = randomStream(20_261_201)
    const draws = Array.from({ length: 6000 }, () => drawn(random))
    const stated = ALL.map(({ name }) => rowOf(job, name).u)
    // A standard deviation of 6000 is known to 0.9 %: within four of that.
    stated.forEach((u, i) => {
      expect(Math.abs(u / deviation(draws.map((draw) => draw[i] as number)) - 1)).toBeLessThan(0.037)
    })
    // A middle that lies further out goes with a smaller radius: the length is surer than either of what it is made of.
    const [width, length, centres] = stated as [number, number, number]
    expect(length).toBeLessThan(0.6 * Math.hypot(width, centres))
  })

  it('keeps the sizes that are wanted as one edit, with their figures and how many there are', () => {
    const sizes: NamedSlotSize[] = [
      { size: 'width', name: 'slot_width', label: 'Slot, width', printed: '12,0' },
      { size: 'length', name: 'slot_length', label: 'Slot, length over all' },
    ]
    const made = addSlot(slotJob(), picked(), { label: 'Slot', count: 4, sizes }, mint)
    const { job, edit } = edited(slotJob(), made)
    expect(job.dimensions.map(({ name, count }) => [name, count])).toEqual([
      ['slot_width', 4],
      ['slot_length', 4],
    ])
    expect(job.marks).toHaveLength(4)
    const ends = job.marks.slice(2).map(({ id }) => id)
    for (const { evidence } of job.dimensions) expect(evidence[0]).toMatchObject({ marks: ends })
    expect(rowOf(job, 'slot_width')).toMatchObject({ basis: 'printed', value: 12, status: 'agreed' })
    const { inverse } = applyEdit(slotJob(), edit)
    expect(applyEdit(job, inverse).job).toEqual(slotJob())
  })

  it('says of its width and length that its ends are not of one size, where that is more than their picks allow', () => {
    const named = { label: 'Slot', count: 1, sizes: ALL }
    const told = (other: number): string[] => {
      const { job } = edited(slotJob(), addSlot(slotJob(), picked(other), named, mint))
      return ALL.map(({ name }) => rowOf(job, name).why)
    }
    for (const why of told(RADIUS)) expect(why).not.toMatch(/not of one size/)
    const [width, length, centres] = told(1.15 * RADIUS)
    expect(width).toMatch(/not of one size: one is 15 % larger/)
    expect(length).toMatch(/not of one size: one is 15 % larger/)
    expect(centres).not.toMatch(/not of one size/)
  })

  it('is refused in words where it is no slot, or nothing of it is wanted', () => {
    const job = withSlot()
    const [, , end = { id: '' }] = job.marks
    const why = (made: Made): string => ('refused' in made ? inWords(made.refused) : 'made')
    const twice = { view: 'V1', ends: [end.id, end.id] }
    const named = { label: 'Slot', count: 1, sizes: ALL }
    expect(why(addSlot(job, twice, named, mint))).toMatch(/Both picks are on one round end/i)
    expect(why(trySlotEnds(job, twice, 'ends', mint))).toMatch(/Both picks are on one round end/i)
    expect(why(addSlot(job, { view: 'V1', ends: [end.id] }, named, mint))).toMatch(/2 marks/)
    expect(why(addSlot(job, picked(), { ...named, sizes: [] }, mint))).toMatch(
      /No size of the slot is ticked/i,
    )
    expect(why(addSlot(job, { ...picked(), view: 'V9' }, named, mint))).toMatch(/view/)
  })
})

describe('a job with a slot', () => {
  it('is read as it was written, also as version 1, and what is no size of a slot is refused', () => {
    const job = withSlot()
    const text = writeJob(job)
    expect(dimensionTable(readJob(JSON.parse(text)))).toEqual(dimensionTable(job))
    const old = { ...JSON.parse(text), version: 1 }
    for (const mark of old.marks) delete mark.picks
    expect(dimensionTable(readJob(old)).rows).toEqual(dimensionTable(job).rows)
    expect(() => readJob(JSON.parse(text.replace('slot-width', 'slot-height')))).toThrow(/measure/)
    expect(() => readJob(JSON.parse(text.replace('slot-width', 'spacing')))).toThrow(/line and a line/)
  })
})
