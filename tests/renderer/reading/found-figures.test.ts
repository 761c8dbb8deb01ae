import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { sharedByBoxes } from '../../../src/core/job/figures/figure-box.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { Evidence, Job } from '../../../src/core/job/model/types.ts'
import type { FigureReading } from '../../../src/core/reading/figure-reading.ts'
import { asTheyReadNow, withNews } from '../../../src/renderer/bench/told-readings.ts'
import { foundFigureItems, lineOfFigure } from '../../../src/renderer/overlay/found-figure-items.ts'
import { figuresOnSheet, inOrder } from '../../../src/renderer/reading/found-figures.ts'

type Box = readonly [number, number, number, number]

const reading = (box: Box, more: Partial<FigureReading> = {}): FigureReading => ({
  box,
  angle: 0,
  text: '3"',
  asRead: '3"',
  value: 76.2,
  kind: 'length',
  clear: true,
  probability: 0.99,
  alternatives: [],
  lattice: { slots: [] },
  ...more,
})

const scan = { file: 'a.png', sha256: '', page: 1, width: 900, height: 900 }

function jobWith(printed: Partial<Extract<Evidence, { basis: 'printed' }>>, dismissed: Box[] = []): Job {
  const piece: Evidence = { id: 'p1', basis: 'printed', text: '3"', sheet: 'S1', ...printed }
  return {
    ...newJob('Plate', 'in'),
    sheets: [
      {
        id: 'S1',
        title: 'Plate',
        record: {},
        scan,
        ...(dismissed.length === 0 ? {} : { dismissed: dismissed.map((box) => ({ box: [...box] })) }),
      },
    ],
    dimensions: [{ name: 'rim', label: 'Rim', kind: 'length', evidence: [piece] }],
  }
}

const hand = { on: true, known: 0, sentence: '' }

const found = [
  { id: 0, reading: reading([100, 100, 60, 30]) },
  { id: 1, reading: reading([300, 105, 60, 30], { clear: false, probability: 0.6 }) },
  { id: 2, reading: reading([100, 400, 60, 30], { text: null, clear: false, probability: 0.4 }) },
]

describe('what was read on a sheet', () => {
  it('is taken where printed evidence stands, dismissed where the sheet says so, else open', () => {
    const job = jobWith({ box: [102, 98, 58, 33] }, [[100, 402, 60, 28]])
    expect(figuresOnSheet(job, 'S1', found).map(({ state }) => state)).toEqual(['taken', 'open', 'dismissed'])
    expect(figuresOnSheet(job, 'S1', found)[0]?.taken).toEqual({ dimension: 'rim', label: 'Rim', text: '3"' })
    expect(figuresOnSheet(job, 'S1', found)[2]?.dismissed).toEqual([100, 402, 60, 28])
  })

  it('is open again once its evidence is withdrawn, and untouched by what stands on another sheet', () => {
    const states = (job: Job): string[] => figuresOnSheet(job, 'S1', found).map(({ state }) => state)
    const box: [number, number, number, number] = [100, 100, 60, 30]
    expect(states(jobWith({ box, withdrawn: 'misread' }))).toEqual(['open', 'open', 'open'])
    expect(states(jobWith({ box, sheet: 'S2' }))).toEqual(['open', 'open', 'open'])
  })

  it('goes by the most doubtful first, or by lines from above, each from left to right', () => {
    const all = figuresOnSheet(jobWith({}), 'S1', found)
    expect(inOrder(all, 'doubt').map(({ id }) => id)).toEqual([2, 1, 0])
    expect(inOrder([...all].reverse(), 'place').map(({ id }) => id)).toEqual([0, 1, 2])
  })

  it('keeps all of them in either order', () => {
    const box = fc.tuple(
      fc.nat(800),
      fc.nat(800),
      fc.integer({ min: 1, max: 90 }),
      fc.integer({ min: 1, max: 90 }),
    )
    fc.assert(
      fc.property(fc.array(box, { maxLength: 30 }), (boxes) => {
        const many = figuresOnSheet(
          jobWith({}),
          'S1',
          boxes.map((one, id) => ({ id, reading: reading(one) })),
        )
        for (const order of ['doubt', 'place'] as const) {
          const ids = inOrder(many, order).map(({ id }) => id)
          expect([...ids].sort((a, b) => a - b)).toEqual(many.map(({ id }) => id))
        }
      }),
    )
  })

  it('has in common with another box what a count of pixels says', () => {
    const side = fc.integer({ min: 1, max: 12 })
    const small = fc.tuple(fc.nat(10), fc.nat(10), side, side)
    const within = ([x, y, w, h]: Box, px: number, py: number): boolean =>
      px >= x && px < x + w && py >= y && py < y + h
    fc.assert(
      fc.property(small, small, (a, b) => {
        let [both, either] = [0, 0]
        for (let x = 0; x < 24; x++) {
          for (let y = 0; y < 24; y++) {
            const [inA, inB] = [within(a, x, y), within(b, x, y)]
            if (inA && inB) both++
            if (inA || inB) either++
          }
        }
        expect(sharedByBoxes(a, b)).toBeCloseTo(both / either, 12)
      }),
    )
  })

  it('is told by the line of its box alone, at its own station only', () => {
    const job = jobWith({ box: [100, 100, 60, 30] }, [[100, 400, 60, 30]])
    const figures = figuresOnSheet(job, 'S1', found)
    expect(figures.map(lineOfFigure)).toEqual(['double', 'dashed', 'dotted'])
    expect(
      new Set([...figures.map(lineOfFigure), lineOfFigure({ state: 'open', reading: reading([0, 0, 1, 1]) })])
        .size,
    ).toBe(4)
    const shown = { sheet: 'S1', selection: null, figures }
    expect(foundFigureItems({ ...shown, station: 'pick' })).toEqual([])
    expect(foundFigureItems({ ...shown, station: 'read' })).toHaveLength(2)
    const chosen = { kind: 'found figure', sheet: 'S1', id: 2 } as const
    expect(foundFigureItems({ ...shown, station: 'read', selection: chosen }).at(-1)).toMatchObject({
      chosen: true,
      line: 'dotted',
    })
  })

  it('grows by what is news, each figure once, whichever comes first', () => {
    const progress = { state: 'reading', done: 1, of: 3, sentence: '' } as const
    const first = withNews(undefined, { sheet: 'S1', progress, hand, figures: found.slice(0, 2) })
    const more = { sheet: 'S1', progress: { ...progress, done: 3 }, hand, figures: found.slice(1) }
    const then = withNews(first, more)
    expect(then.figures.map(({ id }) => id)).toEqual([0, 1, 2])
    expect(then.progress.done).toBe(3)
  })

  it('says what was read again, in the place that it had until an order is asked for', () => {
    const progress = { state: 'ready', done: 3, of: 3, sentence: '' } as const
    const told = withNews(undefined, { sheet: 'S1', progress, hand, figures: found })
    const clear = { id: 2, reading: reading([100, 400, 60, 30], { text: '7"' }) }
    const then = withNews(withNews(told, { ...told, figures: [clear] }), { ...told, figures: [clear] })
    const inDoubt = (figures: typeof then.figures) =>
      inOrder(figuresOnSheet(jobWith({}), 'S1', figures), 'doubt').map(({ id, reading: { text } }) => [
        id,
        text,
      ])
    expect(inDoubt(then.figures)).toEqual([
      [2, '7"'],
      [1, '3"'],
      [0, '3"'],
    ])
    expect(inDoubt(asTheyReadNow(then).figures).map(([id]) => id)).toEqual([1, 0, 2])
  })
})
