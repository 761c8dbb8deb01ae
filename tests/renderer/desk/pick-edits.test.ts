import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import { applyEdit } from '../../../src/core/job/edits/edit.ts'
import { newJob } from '../../../src/core/job/model/new-job.ts'
import type { Job, Measure } from '../../../src/core/job/model/types.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import {
  dimensionEdit,
  evidenceEdit,
  isMeasure,
  outlineOf,
  referenceEdit,
  viewEdit,
} from '../../../src/renderer/desk/pick-edits.ts'
import {
  ended,
  isComplete,
  noPicks,
  type Picks,
  withMark,
  withPick,
} from '../../../src/renderer/picking/picks.ts'
import type { Tool } from '../../../src/renderer/picking/tool.ts'

const PAGE = { width: 2000, height: 1500 }

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

const picked = (tool: Tool, pixels: readonly (readonly [number, number])[]): Picks =>
  pixels.reduce((picks, [x, y]) => withPick(picks, pixel(x, y)), noPicks(tool))

const made = (job: Job, edit: Edit): Job => applyEdit(job, edit).job

function measured(measure: Measure, pixels: readonly (readonly [number, number])[]) {
  const picks = ended(picked({ kind: 'measure', view: 'V1', measure }, pixels))
  if (!isMeasure(picks)) throw new Error('not a measure')
  expect(isComplete(picks)).toBe(true)
  return picks
}

/** A view 100 px to the inch both ways, as its two known sizes say. */
function calibrated(): Job {
  const outlined = picked({ kind: 'outline' }, [
    [1900, 1400],
    [100, 100],
  ])
  const outline = outlineOf(outlined, PAGE) ?? []
  const view = viewEdit(aSheet(), { sheet: 'S1', name: 'Elevation', outline, drawnScale: 1 / 3 })
  let job = made(aSheet(), view.edit)
  for (const [pixels, size] of [
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
  ] as const) {
    const [first] = job.views
    if (first === undefined) throw new Error('no view')
    const tool = { kind: 'reference', view: view.id, reference: 'distance' } as const
    job = made(job, referenceEdit(job, first, picked(tool, pixels), { size }).edit)
  }
  return job
}

describe('what is kept of picks', () => {
  it('is a view inside two opposite corners, whichever comes first, kept on its page', () => {
    const corners = picked({ kind: 'outline' }, [
      [1500.4, -20],
      [99.6, 1700],
    ])
    expect(outlineOf(corners, PAGE)).toEqual([
      [100, 0],
      [1500, 0],
      [1500, 1500],
      [100, 1500],
    ])
    expect(outlineOf(picked({ kind: 'outline' }, [[1, 1]]), PAGE)).toBeNull()
  })

  it('is a known size with its marks, undone as one', () => {
    const before = calibrated()
    const [view] = before.views
    if (view === undefined) throw new Error('no view')
    const tool = { kind: 'reference', view: 'V1', reference: 'rectangle' } as const
    const corners = [
      [300, 300],
      [700, 300],
      [700, 500],
      [300, 500],
    ] as const
    const { edit, id } = referenceEdit(before, view, picked(tool, corners), {
      width: '4"',
      height: '2"',
      u: '1/64',
    })
    const applied = applyEdit(before, edit)
    expect(id).toBe('R3')
    expect(applied.job.views[0]?.references.at(-1)).toEqual({
      id: 'R3',
      kind: 'rectangle',
      marks: ['M5', 'M6', 'M7', 'M8'],
      width: '4"',
      height: '2"',
      u: '1/64',
    })
    expect(made(applied.job, applied.inverse)).toEqual(before)
  })

  it('is a circle whose diameter is known', () => {
    const before = calibrated()
    const [view] = before.views
    if (view === undefined) throw new Error('no view')
    const rim = [
      [300, 400],
      [400, 300],
      [500, 400],
    ] as const
    const tool = { kind: 'reference', view: 'V1', reference: 'diameter' } as const
    const after = made(before, referenceEdit(before, view, picked(tool, rim), { size: '2"' }).edit)
    expect(after.views[0]?.references.at(-1)).toMatchObject({ kind: 'diameter', marks: ['M5'], size: '2"' })
    expect(after.marks.at(-1)).toMatchObject({ kind: 'circle', how: 'hand', sigma: 1, pixels: rim })
  })

  it('is a dimension that the table gives a value', () => {
    const job = calibrated()
    const picks = measured('distance', [
      [400, 600],
      [700, 1000],
    ])
    const after = made(job, dimensionEdit(job, picks, { name: 'brace', label: 'Brace', count: 2 }))
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
    const after = made(job, dimensionEdit(job, picks, { name: 'it', label: 'It', count: 1 }))
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
    const once = made(job, dimensionEdit(job, picks, { name: 'brace', label: 'Brace', count: 1 }))
    const twice = made(once, evidenceEdit(once, picks, 'brace'))
    expect(twice.dimensions[0]?.evidence.map(({ id }) => id)).toEqual(['s1', 's2'])
    expect(dimensionTable(twice).rows[0]?.status).toBe('agreed')
  })

  it('uses a mark that was there before, and adds only those that are new', () => {
    const job = calibrated()
    const old = job.marks[1]
    if (old === undefined) throw new Error('no mark')
    const tool = { kind: 'measure', view: 'V1', measure: 'distance' } as const
    const picks = withPick(withMark(noPicks(tool), old), pixel(1200.12345, 700))
    if (!isMeasure(picks)) throw new Error('not a measure')
    const after = made(job, dimensionEdit(job, picks, { name: 'drop', label: 'Drop', count: 1 }))
    expect(after.dimensions[0]?.evidence[0]).toMatchObject({ marks: ['M2', 'M5'] })
    expect(after.marks).toHaveLength(job.marks.length + 1)
    expect(after.marks.at(-1)).toMatchObject({ pixel: [1200.123, 700] })
  })
})
