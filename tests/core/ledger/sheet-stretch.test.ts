import { describe, expect, it } from 'vitest'
import { applyEdit, type Edit, readEdit } from '../../../src/core/job/edits/edit.ts'
import type { Job } from '../../../src/core/job/model/types.ts'
import { simulateRow } from '../../../src/core/ledger/simulate-row.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import type { Table } from '../../../src/core/ledger/table/table.ts'
import { tableSchema } from '../../../src/core/ledger/table/table-schema.ts'
import { randomStream } from '../../../src/core/uncertainty/random.ts'
import { STRETCH_CASES } from './stretch-cases.ts'
import {
  ACROSS,
  ALONG,
  heldOnSheets,
  ONE_KNOWN,
  type StretchedView,
  stretchedJob,
  WELL_KNOWN,
} from './stretched-sheet.ts'
import { differsAt } from './table/same-bits.ts'

const jobOf = (views: readonly StretchedView[], stretch = 0.008, paper?: string): Job =>
  stretchedJob(
    { stretch, draughting: 0.13, views, ...(paper === undefined ? {} : { paper }) },
    randomStream(3),
  )

const edited = (job: Job, edit: object): Job => applyEdit(job, readEdit(edit as Edit)).job

const uOf = (table: Table, name: string): number =>
  table.rows.find((row) => row.name === name)?.U ?? Number.NaN

const TWO_KNOWN: StretchedView = { ...ONE_KNOWN, mapping: 'two-axis', known: [ALONG, ACROSS] }

/** Of each case, undraughted and draughted. The rest is tried by `tests/bench/stretch.ts`. */
const SHEETS = 150

describe.each(Object.entries(STRETCH_CASES))('%s', (_, { stretch, sheet, bound }) => {
  it('has dimensions that hold the truth as often as they say', () => {
    const random = randomStream(20261130)
    const held = [0, 0.13].flatMap((draughting) => [
      ...heldOnSheets(
        SHEETS,
        (i) => ({ ...sheet, draughting, stretch: stretch(i, random) }),
        random,
      ).values(),
    ])
    const share = held.reduce((sum, n) => sum + n, 0) / (held.length * SHEETS)
    // Those of one view share its scale, so that each sheet counts once.
    const off = 3 * Math.sqrt((0.05 * 0.95) / (2 * SHEETS))
    expect(share).toBeGreaterThan(0.95 - off)
    if (bound === 'exactly') expect(share).toBeLessThan(0.95 + off)
  })
})

describe('views of one sheet', () => {
  it('lend how the paper is stretched to one that can not tell, with all that it is uncertain by', () => {
    const [beside, alone] = [
      dimensionTable(jobOf([WELL_KNOWN, ONE_KNOWN])),
      dimensionTable(jobOf([ONE_KNOWN])),
    ]
    expect(beside.views[1]?.remarks?.at(-1)).toMatch(
      /^By view "View 1" the sheet has shrunk \d\.\d+ % ± 0\.\d+ % more along than across\.$/,
    )
    // Its places lie closer together across: there it has shrunk more.
    expect(dimensionTable(jobOf([WELL_KNOWN, ONE_KNOWN], -0.008)).views[1]?.remarks?.at(-1)).toMatch(
      /shrunk \d\.\d+ % ± 0\.\d+ % more across than along/,
    )
    expect(alone.views[0]?.remarks?.at(-1)).toMatch(
      /^Neither its figured sizes nor another view .* ±0\.98 % is allowed for/,
    )
    expect(uOf(beside, 'across2')).toBeLessThan(0.8 * uOf(alone, 'across1'))
    const by = (name: string) => Object.keys(beside.rows.find((row) => row.name === name)?.by ?? {})
    expect(by('across2').some((source) => by('along1').includes(source))).toBe(true)
    expect(tableSchema.parse(beside)).toEqual(beside)
  })

  it('are first order well enough where one lends to another', () => {
    const job = jobOf([WELL_KNOWN, ONE_KNOWN])
    const { firstOrder, simulated } = simulateRow(job, 'across2', { trials: 2000, seed: 4 })
    expect(Math.abs(simulated.u / firstOrder.u - 1)).toBeLessThan(0.08)
  })

  it('check one another where each has just enough figured sizes', () => {
    const [one, both] = [dimensionTable(jobOf([TWO_KNOWN])), dimensionTable(jobOf([WELL_KNOWN, TWO_KNOWN]))]
    expect(one.views[0]?.dof).toBe(0)
    expect(both.views[1]).toMatchObject({ dof: 1 })
    expect(both.views[1]?.unchecked).toBeUndefined()
  })

  it('keep to their own where they do not agree, and the odd one is named', () => {
    const third = { ...TWO_KNOWN, at: [2000, 5000] } as const
    const job = edited(jobOf([WELL_KNOWN, TWO_KNOWN, third]), {
      do: 'change-reference',
      view: 'V3',
      id: 'R1',
      set: { size: '165 mm' },
    })
    const { views, cautions } = dimensionTable(job)
    expect(views[2]?.problem).toMatch(
      /^By view "View 3" .*; views "View 1" and "View 2" of the same sheet tell/,
    )
    expect(cautions.some((caution) => caution.includes('By view "View 3"'))).toBe(true)
    expect(views[0]?.problem ?? '').not.toContain('By view')
    expect(views[0]?.remarks?.join(' ')).toContain('By view "View 2" and its own')
    // Of two that differ it may be either, unless paper hardly ever does what one of them tells.
    const oddOfTwo = (size: string): string[] => {
      const { views } = dimensionTable(
        edited(jobOf([WELL_KNOWN, TWO_KNOWN]), {
          do: 'change-reference',
          view: 'V2',
          id: 'R1',
          set: { size },
        }),
      )
      return views.flatMap(({ problem }) => (problem?.startsWith('By view') ? problem.slice(0, 15) : []))
    }
    expect(oddOfTwo('157.3 mm')).toEqual(['By view "View 1', 'By view "View 2'])
    expect(oddOfTwo('165 mm')).toEqual(['By view "View 2'])
  })

  it('do not have one scale suggested for them, but where their sheet keeps its shape', () => {
    const few: StretchedView = {
      ...WELL_KNOWN,
      at: [6000, 4500],
      known: WELL_KNOWN.known,
      scale: 1.5,
    }
    const suggests = (views: readonly StretchedView[], paper?: string): string | undefined =>
      dimensionTable(jobOf(views, 0.012, paper)).views[0]?.suggests
    expect(suggests([few], '0 %')).toBe('uniform')
    expect(suggests([few])).toBeUndefined()
    expect(suggests([few, WELL_KNOWN])).toBeUndefined()
  })

  it('are remarked on where paper seldom does what two figures misread alike make of it', () => {
    const misread = ['R1', 'R3'].reduce(
      (job, id) =>
        edited(job, {
          do: 'change-reference',
          view: 'V1',
          id,
          set: { size: id === 'R1' ? '163 mm' : '161 mm' },
        }),
      jobOf([WELL_KNOWN], 0),
    )
    const remarks = (job: Job): string => {
      const [view] = dimensionTable(job).views
      return [view?.problem ?? '', ...(view?.remarks ?? [])].join(' ')
    }
    expect(remarks(misread)).toMatch(
      /shrunk \d.* more along than across, and paper seldom does more than .* misread alike\./,
    )
    expect(remarks(jobOf([WELL_KNOWN], 0))).not.toContain('seldom')
    expect(remarks(jobOf([WELL_KNOWN], 0.005))).not.toContain('seldom')
  })

  it('tell nothing of it by circles about one centre, however well they are picked', () => {
    const job = jobOf([WELL_KNOWN, { ...ONE_KNOWN, mapping: 'two-axis' }], 0)
    const [view] = job.views.slice(1)
    const ring = (id: string, radius: number) => ({
      id,
      sheet: 'S',
      how: 'stroke',
      sigma: 0.3,
      kind: 'circle',
      // Where other lines cross, its places are left out: of one beside it, of the other above and below.
      pixels: Array.from({ length: 40 }, (_, i): [number, number] => [
        radius * Math.cos(i / 6.37),
        radius * Math.sin(i / 6.37),
      ])
        .filter(([x, y]) => Math.abs(radius === 900 ? x : y) < 0.97 * radius)
        .map(([x, y]) => [6000 + x, 4500 + y]),
    })
    const circles = (large: string): Job =>
      ({
        ...job,
        marks: [...job.marks, ring('K1', 900), ring('K2', 600)],
        views: [
          ...job.views.slice(0, 1),
          {
            ...view,
            references: [
              { id: 'R1', kind: 'diameter', marks: ['K1'], size: large },
              { id: 'R2', kind: 'diameter', marks: ['K2'], size: '120 mm' },
            ],
          },
        ],
      }) as unknown as Job
    const told = (job: Job) =>
      dimensionTable(job).views.map(({ problem, remarks }) => [problem ?? '', ...(remarks ?? [])].join(' '))
    const [beside, own] = told(circles('180 mm'))
    expect(own).toContain('By view "View 1" the sheet has shrunk')
    expect(beside).not.toContain('View 2')
    // One that is misread does not fit the other, and is not made to by what the paper would have done.
    expect(told(circles('181.5 mm'))[1]).toMatch(/do not agree|does not fit/)
    expect(told(circles('181.5 mm'))[0]).not.toContain('View 2')
  })

  it('do not hand on what paper seldom does, and each row that rests on it says so', () => {
    const misread = edited(jobOf([TWO_KNOWN, ONE_KNOWN], 0), {
      do: 'change-reference',
      view: 'V1',
      id: 'R2',
      set: { size: '123 mm' },
    })
    const { views, rows, cautions } = dimensionTable(misread)
    expect(views[0]?.problem).toMatch(/shrunk 2\.\d % .* and paper seldom does more than/)
    expect(views[1]?.remarks?.join(' ')).not.toContain('View 1')
    expect(views[1]?.remarks?.at(-1)).toMatch(/is allowed for: a figured size each way/)
    expect(cautions.join(' ')).toContain('paper seldom does more than')
    expect(rows.find(({ name }) => name === 'along1')?.why).toMatch(
      /The scale of view|Nothing checks the scale of view/,
    )
    // Where it may well be, it is handed on.
    expect(dimensionTable(jobOf([TWO_KNOWN, ONE_KNOWN], 0)).views[1]?.remarks?.at(-1)).toContain('"View 1"')
  })

  it('are allowed what the sheet states of its paper, and nothing where it keeps its shape', () => {
    const [stated, none, usual] = ['2 %', '0 %', undefined].map((paper) =>
      uOf(dimensionTable(jobOf([ONE_KNOWN], 0, paper)), 'across1'),
    )
    expect(stated).toBeGreaterThan((usual ?? 0) * 1.5)
    expect(none).toBeLessThan((usual ?? 0) * 0.8)
  })

  it('are worked out anew when what another tells changes, and come out as they would whole', () => {
    const job = jobOf([WELL_KNOWN, ONE_KNOWN, { ...ONE_KNOWN, known: [ACROSS], at: [5500, 500] }])
    let [now, table] = [job, dimensionTable(job)]
    const edits = [
      { do: 'change-reference', view: 'V1', id: 'R2', set: { size: '120.4 mm' } },
      { do: 'change-view', id: 'V1', set: { mapping: 'affine' } },
      { do: 'change-sheet', id: 'S', set: { paper: '0.9 %' } },
      { do: 'change-view', id: 'V1', set: { name: 'Plan', mapping: 'two-axis' } },
      { do: 'remove-reference', view: 'V1', id: 'R3' },
    ]
    for (const edit of edits) {
      const next = edited(now, edit)
      const after = dimensionTable(next, { before: table })
      expect(differsAt(after, dimensionTable(next))).toBeNull()
      expect(uOf(after, 'across2')).not.toBe(uOf(table, 'across2'))
      ;[now, table] = [next, after]
    }
  })
})
