import { pixel } from '../../src/core/geometry/frames.ts'
import type { Job, Note, View } from '../../src/core/job/model/types.ts'
import { chance, STREAM } from './chance.ts'
import { type BoxOf, dimensions } from './dimensions.ts'
import { DRAUGHTING } from './draughtsman.ts'
import { type DrawnSheet, drawSheet } from './draw-sheet.ts'
import { BAD_REFERENCE, region, VIEWS } from './job-views.ts'
import { PICK_PLANS } from './pick-plans.ts'
import { ARCHIVIST, pick, RESTORER } from './picks.ts'
import type { Pt } from './plane.ts'
import { DISTORTION, PIXELS_ACROSS, PIXELS_ALONG, toPixel } from './sheet-distortion.ts'
import { TRUE_VALUES, type TrueValue } from './true-values.ts'

/** When the sheet was brought in and its views were named, and when the original was first measured. */
const CATALOGUED = { by: ARCHIVIST, at: '2026-03-09T15:40:00Z' }
const AT_THE_YARD = { by: RESTORER, at: '2026-04-02T10:30:00Z' }
const ADDED_UP = { by: RESTORER, at: '2026-03-11T17:00:00Z' }

/** The views and the sizes known in them, as the archivist entered them. */
const namedViews = (): View[] =>
  structuredClone(VIEWS).map((view) => ({
    ...view,
    ...CATALOGUED,
    references: view.references.map((reference) => ({ ...reference, ...CATALOGUED })),
  }))

/** The sheet that is committed. */
export const SAMPLE_SEED = 1911

/** What nobody in the job knows: only tests read it. */
export interface Truth {
  seed: number
  dimensions: Record<string, TrueValue>
  distortion: {
    dpi: number
    alongGrain: number
    acrossGrain: number
    /** Degrees from the image's x axis towards its y axis. */
    turn: number
    pixelsPerMmAlong: number
    pixelsPerMmAcross: number
    draughting: string
  }
  /** Drawn size / true size of each view as truly drawn, before the sheet shrank. */
  scales: Record<string, { stated: number; drawn: number }>
  /** For each mark the pixels where its picks would lie without picking error. */
  marks: Record<string, Pt[]>
  misprint: { dimension: string; evidence: string; text: string; trueText: string }
  badReference: { view: string; id: string; stated: string; trueSize: string }
  smudged: { dimension: string; evidence: string; trueText: string }
  brokenRelation: string
}

/**
 * The sample job with the errors of one seed: the draughtsman's, the picks' and the caliper's. Renders nothing.
 * @param sha256 of the scan, when there is one
 */
export function makeJob(
  seed: number,
  sha256 = '0'.repeat(64),
  sheet: DrawnSheet = drawSheet(seed),
): { job: Job; truth: Truth } {
  const picking = chance(seed, STREAM.picking)
  const picked = PICK_PLANS.map((plan) => pick(plan, sheet.views[plan.view], picking))
  const boxOf = figureBoxes(sheet)
  const job: Job = {
    format: 'scantling-job',
    version: 1,
    title: 'Deck ventilator of a chain ferry',
    unit: 'in',
    gauge: 'us-standard-1893',
    people: [
      { id: ARCHIVIST, name: 'Ottilie Marchbeck', role: 'archivist', ...CATALOGUED },
      { id: RESTORER, name: 'Joss Tarrowby', role: 'restorer', by: RESTORER, at: '2026-03-11T13:50:00Z' },
    ],
    instruments: [
      {
        id: 'caliper',
        name: 'Vernier caliper, 12 inch',
        resolution: '0.001 in',
        limit: '0.002 in',
        note: 'Checked against gauge blocks in February 2026.',
        ...AT_THE_YARD,
      },
    ],
    sheets: [
      {
        id: 'sheet-1',
        title: 'Deck ventilator, chain ferry No. 2',
        ...CATALOGUED,
        record: {
          identifier: 'ACFT/DRG/1172',
          creator: 'Holmgarth Foundry, Pellow Staithe',
          date: '1911-03-14',
          source: 'Averdale Chain Ferry Trust, drawing office press 4, folder 11',
          rights: 'Invented for this sample; free to use with it.',
          description:
            'Ink on cartridge paper, 17 by 11 inches, folded twice, stained. Altered 2 November 1912 from six holes to eight.',
        },
        scan: {
          file: 'sheet-1.jpg',
          sha256,
          page: 1,
          width: DISTORTION.imageWidth,
          height: DISTORTION.imageHeight,
          dpi: DISTORTION.dpi,
        },
        draughting: `${DRAUGHTING} mm`,
      },
    ],
    views: namedViews(),
    marks: picked.map(({ mark }) => mark),
    dimensions: dimensions(boxOf, chance(seed, STREAM.original)),
    relations: [
      {
        id: 'heights',
        text: 'overall_height = flange_thickness + drum_height + cone_height + neck_height + opening_height + hood_height',
        ...ADDED_UP,
      },
      { id: 'flange', text: 'flange_od = bolt_circle + 2 * edge_margin', ...ADDED_UP },
      { id: 'palm', text: 'palm_height = palm_pitch + 2 * palm_margin', ...ADDED_UP },
    ],
    notes: notes(boxOf),
  }
  return { job, truth: truthOf(seed, picked) }
}

function figureBoxes(sheet: DrawnSheet): BoxOf {
  const figures = new Map(sheet.board.figures.map((figure) => [figure.id, figure]))
  return (place) => {
    const figure = figures.get(place)
    if (figure === undefined) throw new Error(`The figure ${place} is not on the sheet.`)
    const pixels = figure.corners.map(toPixel)
    const xs = pixels.map((p) => p[0])
    const ys = pixels.map((p) => p[1])
    const margin = 8
    const [x, y] = [Math.floor(Math.min(...xs) - margin), Math.floor(Math.min(...ys) - margin)]
    return [x, y, Math.ceil(Math.max(...xs) + margin) - x, Math.ceil(Math.max(...ys) + margin) - y]
  }
}

function notes(boxOf: BoxOf): Note[] {
  const around = (place: Parameters<BoxOf>[0]): Note['outline'] => {
    const [x, y, w, h] = boxOf(place)
    return [pixel(x, y), pixel(x + w, y), pixel(x + w, y + h), pixel(x, y + h)]
  }
  return [
    {
      id: 'N1',
      sheet: 'sheet-1',
      outline: around('elevation/hood_od'),
      text: 'Stain over the figure; could not be lifted. See what the scale says before choosing.',
      by: ARCHIVIST,
      at: '2026-03-09T16:32:00Z',
      about: 'hood_od',
    },
    {
      id: 'N2',
      sheet: 'sheet-1',
      outline: around('elevation/neck_height'),
      text: 'The heights do not add up to the height over all, and this one scales short. A slip of the pen?',
      by: RESTORER,
      at: '2026-03-11T17:05:00Z',
      about: 'neck_height',
    },
    {
      id: 'N3',
      sheet: 'sheet-1',
      outline: region(11.75, 9.96, 16.5, 10.21),
      text: 'The original has eight holes, so it was made or altered after November 1912.',
      by: ARCHIVIST,
      at: '2026-03-09T16:40:00Z',
      about: 'hole_count',
    },
  ]
}

function truthOf(seed: number, picked: { mark: { id: string }; truth: Pt[] }[]): Truth {
  const round = (x: number) => Math.round(x * 1e4) / 1e4
  const D = DISTORTION
  return {
    seed,
    dimensions: TRUE_VALUES,
    distortion: {
      dpi: D.dpi,
      alongGrain: D.alongGrain,
      acrossGrain: D.acrossGrain,
      turn: D.turn,
      pixelsPerMmAlong: PIXELS_ALONG,
      pixelsPerMmAcross: PIXELS_ACROSS,
      draughting: `${DRAUGHTING} mm`,
    },
    scales: {
      elevation: { stated: 0.25, drawn: 0.25 },
      'foot-plan': { stated: 0.5, drawn: 0.5 * 1.015 },
      bracket: { stated: 0.5, drawn: 0.5 },
    },
    marks: Object.fromEntries(
      picked.map(({ mark, truth }) => [mark.id, truth.map(([x, y]): Pt => [round(x), round(y)])]),
    ),
    misprint: { dimension: 'neck_height', evidence: 'p1', text: '3 5/8"', trueText: '3 1/8"' },
    badReference: {
      view: BAD_REFERENCE.view,
      id: BAD_REFERENCE.id,
      stated: BAD_REFERENCE.stated,
      trueSize: BAD_REFERENCE.printed,
    },
    smudged: { dimension: 'hood_od', evidence: 'p1', trueText: '11 1/2"' },
    brokenRelation: 'heights',
  }
}
