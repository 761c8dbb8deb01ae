/**
 * Sheets whose paper is stretched otherwise along than across, with views of scales of their own, errors drawn as their
 * sigmas say. Written without the code under test: places are stretched here by hand.
 */
import { readJob } from '../../../src/core/job/read-job.ts'
import { dimensionTable } from '../../../src/core/ledger/table/dimension-table.ts'
import type { TableRow } from '../../../src/core/ledger/table/table.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'

type XY = readonly [number, number]

export interface StretchedView {
  mapping: 'uniform' | 'two-axis'
  /** Between which places sizes are known, mm in true size. */
  known: readonly (readonly [XY, XY])[]
  /** Where its middle lies on the sheet, pixels. */
  at: XY
  /** Pixels in a millimetre. */
  scale: number
}

export interface StretchedSheet {
  /** ln of the scale along over the scale across. */
  stretch: number
  /** mm on paper. */
  draughting: number
  views: readonly StretchedView[]
  /** As the sheet states it. */
  paper?: string
}

/** What is measured in each view, mm from its middle. */
const MEASURED: Record<'along' | 'across' | 'slant', [XY, XY]> = {
  along: [
    [-70, 10],
    [65, 12],
  ],
  across: [
    [-20, -60],
    [-15, 62],
  ],
  slant: [
    [-60, -50],
    [55, 60],
  ],
}
export type StretchedMeasure = keyof typeof MEASURED
export const STRETCHED_MEASURES = Object.keys(MEASURED) as StretchedMeasure[]

const DPI = 300

const lengthOf = ([p, q]: readonly [XY, XY]): number => Math.hypot(q[0] - p[0], q[1] - p[1])

/** A job of the sheet; dimensions are called by their measure and the number of their view: `across2`. */
export function stretchedJob({ stretch, draughting, views, paper }: StretchedSheet, random: RandomStream) {
  const marks: object[] = []
  const pick = (view: StretchedView, [x, y]: XY): string => {
    // Drawing errors are on paper, and a millimetre of paper has so many pixels.
    const off = (): number => (draughting * DPI * random.normal()) / 25.4 + random.normal()
    const id = `M${marks.length + 1}`
    const pixel = [
      view.at[0] + view.scale * Math.exp(-stretch / 2) * x + off(),
      view.at[1] + view.scale * Math.exp(stretch / 2) * y + off(),
    ]
    marks.push({ id, sheet: 'S', how: 'hand', sigma: 1, kind: 'point', pixel })
    return id
  }
  const dimensions: object[] = []
  const made = views.map((view, v) => {
    const id = `V${v + 1}`
    for (const name of STRETCHED_MEASURES) {
      dimensions.push({
        name: `${name}${v + 1}`,
        label: name,
        kind: 'length',
        evidence: [
          {
            id: 's',
            basis: 'scaled',
            view: id,
            measure: 'distance',
            marks: MEASURED[name].map((place) => pick(view, place)),
          },
        ],
      })
    }
    const references = view.known.map((ends, r) => ({
      id: `R${r + 1}`,
      kind: 'distance',
      marks: ends.map((place) => pick(view, place)),
      size: `${lengthOf(ends).toFixed(9)} mm`,
    }))
    return { id, sheet: 'S', name: `View ${v + 1}`, mapping: view.mapping, references }
  })
  return readJob({
    format: 'scantling-job',
    version: 1,
    title: 'Stretched',
    unit: 'mm',
    people: [],
    instruments: [],
    sheets: [
      {
        id: 'S',
        title: 'Sheet',
        record: {},
        draughting: `${draughting} mm`,
        ...(paper === undefined ? {} : { paper }),
        scan: { file: 'a.png', sha256: '0'.repeat(64), page: 1, width: 8000, height: 6000, dpi: DPI },
      },
    ],
    views: made,
    marks,
    dimensions,
    relations: [],
    notes: [],
  })
}

/** How often the interval of each dimension held the truth, of so many sheets. */
export function heldOnSheets(
  sheets: number,
  sheet: (i: number) => StretchedSheet,
  random: RandomStream,
): Map<string, number> {
  const held = new Map<string, number>()
  for (let i = 0; i < sheets; i++) {
    const table = dimensionTable(stretchedJob(sheet(i), random))
    for (const row of table.rows) if (holds(row)) held.set(row.name, (held.get(row.name) ?? 0) + 1)
  }
  return held
}

function holds({ name, value, U }: TableRow): boolean {
  const truth = lengthOf(MEASURED[name.replace(/\d+$/, '') as StretchedMeasure])
  return value !== null && Math.abs(value - truth) <= U
}

/** Known along, and across, to a view of 160 × 130 mm. */
export const ALONG: readonly [XY, XY] = [
  [-80, -55],
  [80, -55],
]
export const ACROSS: readonly [XY, XY] = [
  [75, -60],
  [75, 60],
]
export const ALONG_BELOW: readonly [XY, XY] = [
  [-80, 58],
  [78, 60],
]
export const ACROSS_LEFT: readonly [XY, XY] = [
  [-78, -58],
  [-80, 62],
]

/** A large view with two figured sizes each way. */
export const WELL_KNOWN: StretchedView = {
  mapping: 'two-axis',
  known: [ALONG, ACROSS, ALONG_BELOW, ACROSS_LEFT],
  at: [2000, 2000],
  scale: 11,
}

/** Another of half its scale, with one size along. */
export const ONE_KNOWN: StretchedView = { mapping: 'uniform', known: [ALONG], at: [5500, 3000], scale: 6 }
