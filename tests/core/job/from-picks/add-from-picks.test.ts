import { describe, expect, it } from 'vitest'
import { degrees } from '../../../../src/core/geometry/angle-units.ts'
import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { Edit } from '../../../../src/core/job/edits/edit.ts'
import { applyEdit } from '../../../../src/core/job/edits/edit.ts'
import { addKnownSize, type KnownSize } from '../../../../src/core/job/from-picks/add-known-size.ts'
import { addDimension, addScaledEvidence } from '../../../../src/core/job/from-picks/add-measured.ts'
import { addView, outlineBetween } from '../../../../src/core/job/from-picks/add-view.ts'
import { markByHand } from '../../../../src/core/job/from-picks/mark-by-hand.ts'
import type { Made, PickedMark, PicksRefused } from '../../../../src/core/job/from-picks/picked-mark.ts'
import { labelOf } from '../../../../src/core/job/ids/label.ts'
import { FEWEST_PICKS, type MarkNeed, MEASURE_NEEDS } from '../../../../src/core/job/model/mark-needs.ts'
import { newJob } from '../../../../src/core/job/model/new-job.ts'
import type { Job, Measure, View } from '../../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../../src/core/ledger/table/dimension-table.ts'
import { inWords } from '../../../../src/core/words/core-words.ts'
import { seededMint } from '../ids/seeded-mint.ts'

const PAGE = { width: 2000, height: 1500 }
const mint = seededMint(11)
/** The view of a job that is calibrated. */
const VIEW = seededMint(5)('view')

/** A sheet at 300 dpi. */
function aSheet(): Job {
  const job = newJob('Windlass', 'in')
  job.sheets.push({
    id: 'S1',
    title: 'Windlass',
    record: {},
    scan: { file: 'windlass.png', sha256: '0'.repeat(64), page: 1, ...PAGE, dpi: 300 },
  })
  return job
}

type Places = readonly (readonly [number, number])[]

/** A mark picked by hand; the test ends where it is none. */
function byHand(need: MarkNeed, places: Places): PickedMark {
  const pixels = places.map(([x, y]) => pixel(x, y))
  const mark = markByHand(
    need,
    pixels,
    pixels.map(() => 1),
  )
  if ('refused' in mark) throw new Error(inWords(mark.refused))
  return mark
}

const points = (places: Places): PickedMark[] => places.map((place) => byHand('point', [place]))

/** Picks of a measure, in the order that they are picked: those of a path, or so many as its marks need. */
function measured(measure: Measure, places: Places) {
  const needs = MEASURE_NEEDS[measure][0] ?? []
  let from = 0
  const marks = needs.map((need) => {
    const path = need === 'path' || need === 'closed path'
    const own = places.slice(from, path ? undefined : from + FEWEST_PICKS[need])
    from += own.length
    return byHand(need, own)
  })
  expect(from).toBe(places.length)
  return { view: VIEW, measure, marks }
}

function edited(job: Job, made: Made): Job {
  if ('refused' in made) throw new Error(inWords(made.refused))
  return applyEdit(job, made.edit).job
}

const made = (job: Job, edit: Edit): Job => applyEdit(job, edit).job

const why = (made: object): string => ('refused' in made ? inWords((made as PicksRefused).refused) : '')

function viewOf(job: Job): View {
  const [view] = job.views
  if (view === undefined) throw new Error('no view')
  return view
}

/** A view 100 px to the inch both ways, as its two figured sizes say. */
function calibrated(): Job {
  const outline = outlineBetween(pixel(1900, 1400), pixel(100, 100), PAGE)
  const { edit } = addView(
    aSheet(),
    { sheet: 'S1', name: 'Elevation', outline, drawnScale: 1 / 3 },
    seededMint(5),
  )
  const sizes: [Places, string][] = [
    [
      [
        [200, 300],
        [1200, 300],
      ],
      '10"',
    ],
    [
      [
        [200, 300],
        [200, 1100],
      ],
      '8"',
    ],
  ]
  return sizes.reduce(
    (job, [places, size]) => edited(job, addKnownSize(job, viewOf(job), points(places), { size }, mint)),
    made(aSheet(), edit),
  )
}

describe('what is kept of picks', () => {
  it('is a view inside two opposite corners, whichever comes first, kept on its page', () => {
    const whole: Pixel[] = [pixel(100, 0), pixel(1500, 0), pixel(1500, 1500), pixel(100, 1500)]
    expect(outlineBetween(pixel(1500.4, -20), pixel(99.6, 1700), PAGE)).toEqual(whole)
    expect(outlineBetween(pixel(99.6, 1700), pixel(1500.4, -20), PAGE)).toEqual(whole)
  })

  it('is a view that lies as its sheet does', () => {
    const sheet = aSheet()
    const { id, edit } = addView(sheet, { sheet: 'S1', name: 'Elevation' }, mint)
    expect(made(sheet, edit).views).toEqual([
      { id, number: 1, sheet: 'S1', name: 'Elevation', mapping: 'two-axis', references: [] },
    ])
    const straightened = {
      ...sheet,
      sheets: sheet.sheets.map((one) => ({ ...one, straight: degrees(1.25) })),
    }
    expect(
      made(straightened, addView(straightened, { sheet: 'S1', name: 'Plan' }, mint).edit).views[0],
    ).toMatchObject({
      grain: 1.25,
    })
  })

  it('is a figured size with its marks, undone as one', () => {
    const before = calibrated()
    const corners = points([
      [300, 300],
      [700, 300],
      [700, 500],
      [300, 500],
    ])
    const size = { width: '4"', height: '2"', u: '1/64' }
    const added = addKnownSize(before, viewOf(before), corners, size, mint)
    if ('refused' in added) throw new Error(inWords(added.refused))
    const applied = applyEdit(before, added.edit)
    expect(added.edit).toMatchObject({ name: 'add figured size 3 to view “Elevation”' })
    const marks = applied.job.marks.slice(-4)
    expect(marks.map(labelOf)).toEqual(['point 5', 'point 6', 'point 7', 'point 8'])
    expect(applied.job.views[0]?.references.at(-1)).toEqual({
      id: added.id,
      number: 3,
      kind: 'rectangle',
      marks: marks.map(({ id }) => id),
      ...size,
    })
    expect(made(applied.job, applied.inverse)).toEqual(before)
  })

  it('is a circle whose diameter is known', () => {
    const before = calibrated()
    const rim: Places = [
      [300, 400],
      [400, 300],
      [500, 400],
    ]
    const after = edited(
      before,
      addKnownSize(before, viewOf(before), [byHand('circle', rim)], { size: '2"' }, mint),
    )
    expect(after.views[0]?.references.at(-1)).toMatchObject({
      kind: 'diameter',
      marks: [after.marks.at(-1)?.id],
      size: '2"',
    })
    expect(after.marks.at(-1)).toMatchObject({
      number: 5,
      kind: 'circle',
      how: 'hand',
      sigma: 1,
      pixels: rim,
    })
  })

  it('is a dimension that the table gives a value', () => {
    const job = calibrated()
    const picks = measured('distance', [
      [400, 600],
      [700, 1000],
    ])
    const after = edited(job, addDimension(job, picks, { name: 'brace', label: 'Brace', count: 2 }, mint))
    const [row] = dimensionTable(after).rows
    expect(row).toMatchObject({
      name: 'brace',
      label: 'Brace',
      kind: 'length',
      count: 2,
      basis: 'scaled',
      status: 'single',
    })
    expect(row?.value).toBeCloseTo(5, 9)
  })

  it.each([
    [
      'spacing',
      [
        [300, 300],
        [900, 300],
        [300, 700],
        [900, 700],
      ],
      'length',
      4,
    ],
    [
      'diameter',
      [
        [300, 400],
        [400, 300],
        [500, 400],
      ],
      'length',
      2,
    ],
    [
      'radius',
      [
        [300, 400],
        [400, 300],
        [500, 400],
      ],
      'length',
      1,
    ],
    [
      'centres',
      [
        [300, 400],
        [400, 300],
        [500, 400],
        [800, 400],
        [900, 300],
        [1000, 400],
      ],
      'length',
      5,
    ],
    [
      'angle',
      [
        [300, 300],
        [900, 300],
        [300, 300],
        [300, 900],
      ],
      'angle',
      90,
    ],
    [
      'run',
      [
        [300, 300],
        [600, 300],
        [600, 700],
      ],
      'length',
      7,
    ],
    [
      'area',
      [
        [300, 300],
        [600, 300],
        [600, 700],
        [300, 700],
      ],
      'area',
      12,
    ],
  ] as const)('is a %s', (measure, pixels, kind, value) => {
    const job = calibrated()
    const picks = measured(measure, pixels)
    const after = edited(job, addDimension(job, picks, { name: 'it', label: 'It', count: 1 }, mint))
    const [row] = dimensionTable(after).rows
    expect(row).toMatchObject({ kind, basis: 'scaled' })
    expect(row?.value).toBeCloseTo(value, 6)
    expect(after.dimensions[0]).not.toHaveProperty('count')
  })

  it('is further evidence for a dimension that is there already', () => {
    const job = calibrated()
    const picks = measured('distance', [
      [400, 600],
      [700, 1000],
    ])
    const once = edited(job, addDimension(job, picks, { name: 'brace', label: 'Brace', count: 1 }, mint))
    const twice = edited(once, addScaledEvidence(once, picks, 'brace', mint))
    expect(twice.dimensions[0]?.evidence.map(labelOf)).toEqual(['scaled 1', 'scaled 2'])
    expect(dimensionTable(twice).rows[0]?.status).toBe('agreed')
  })

  it('uses a mark that was there before, and adds only those that are new', () => {
    const job = calibrated()
    const old = job.marks[1]
    if (old === undefined) throw new Error('no mark')
    const marks = [old.id, byHand('point', [[1200.12345, 700]])]
    const picks = { view: VIEW, measure: 'distance' as const, marks }
    const after = edited(job, addDimension(job, picks, { name: 'drop', label: 'Drop', count: 1 }, mint))
    expect(after.dimensions[0]?.evidence[0]).toMatchObject({ marks: [old.id, after.marks.at(-1)?.id] })
    expect(after.marks).toHaveLength(job.marks.length + 1)
    expect(after.marks.at(-1)).toMatchObject({ pixel: [1200.123, 700] })
  })
})

describe('nothing is kept, and why is said,', () => {
  const named = { name: 'brace', label: 'Brace', count: 1 }
  const two: Places = [
    [400, 600],
    [700, 1000],
  ]

  it('of a mark with fewer picks than it needs', () => {
    expect(why(markByHand('point', [], []))).toBe('a point needs 1 picked points or more, and this has 0')
    expect(why(markByHand('circle', [pixel(1, 1), pixel(2, 2)], [1, 1]))).toBe(
      'a circle needs 3 picked points or more, and this has 2',
    )
    const refused = markByHand('line', [pixel(1, 1)], [1])
    if (!('refused' in refused)) throw new Error('One pick is no line.')
    const job = calibrated()
    expect(addKnownSize(job, viewOf(job), refused, { size: '2"' }, mint)).toBe(refused)
    expect(addDimension(job, { view: VIEW, measure: 'distance', marks: refused }, named, mint)).toBe(refused)
  })

  it.each<[number, KnownSize, string]>([
    [
      3,
      { width: '4"', height: '2"' },
      'a rectangle is picked by 4 marks (point, point, point, point), and this has 3',
    ],
    [
      5,
      { width: '4"', height: '2"' },
      'a rectangle is picked by 4 marks (point, point, point, point), and this has 5',
    ],
    [0, { size: '2"' }, 'a distance is picked by 2 marks (point, point), and this has 0'],
    [3, { size: '2"' }, 'a distance is picked by 2 marks (point, point), and this has 3'],
  ])('of %i marks that are not those of a figured size', (count, size, sentence) => {
    const job = calibrated()
    const marks = points(Array.from({ length: count }, (_, i) => [100 * i, 10 * i] as const))
    expect(why(addKnownSize(job, viewOf(job), marks, size, mint))).toContain(sentence)
  })

  it('of marks that are not those of a measure', () => {
    const picks = { ...measured('distance', two), measure: 'diameter' as const }
    expect(why(addDimension(calibrated(), picks, named, mint))).toContain(
      'a diameter is picked by one mark (circle), and this has 2',
    )
  })

  it('of a view or a dimension that is gone', () => {
    const job = calibrated()
    const picks = measured('distance', two)
    expect(addDimension(job, { ...picks, view: 'V9' }, named, mint)).toMatchObject({
      refused: { code: 'edit.no-such-item', parts: { kind: 'view', id: 'V9' } },
    })
    expect(addScaledEvidence(job, picks, 'brace', mint)).toMatchObject({
      refused: { code: 'edit.no-such-dimension', parts: { name: 'brace' } },
    })
  })
})
