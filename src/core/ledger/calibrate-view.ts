import { GeometryError } from '../geometry/geometry-error.ts'
import type { Job, Reference, Sheet, View } from '../job/types.ts'
import { parseLength } from '../quantity/parse-length.ts'
import { type Calibration, calibrate } from '../sheet/calibrate.ts'
import { CalibrationError } from '../sheet/calibration-error.ts'
import type { Feature } from '../sheet/feature.ts'
import { MAPPINGS } from '../sheet/mapping.ts'
import {
  diameterReference,
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../sheet/reference.ts'
import { startingScale } from '../sheet/starting-scale.ts'
import { viewFrame } from '../sheet/view-frame.ts'
import type { ViewMapping } from '../sheet/view-mapping.ts'
import { exact, measured, type Uncertain } from '../uncertainty/uncertain.ts'

/** Plotting accuracy of 0.25 mm at 95 %. Common practice, no source. */
const DEFAULT_DRAUGHTING_MM = 0.13

/** Taken where neither the sheet's dpi nor the view's drawn scale is known; the table then says so. */
const ASSUMED_DPI = 300

export interface CalibratedView {
  view: View
  calibration: Calibration | null
  /** Why it could not be calibrated: goes on from "can't be calibrated: ". */
  problem?: string
  /** A whole sentence, when something had to be assumed. */
  caution?: string
}

/**
 * Calibrates a view of a job.
 * @param featureOf the feature of a mark by its id; throws GeometryError when the mark determines none
 */
export function calibrateView(job: Job, view: View, featureOf: (id: string) => Feature): CalibratedView {
  try {
    const sizes = view.references.flatMap((r) => statedSizes(r, job, featureOf))
    const sheet = job.sheets.find((s) => s.id === view.sheet)
    const features = sizes.flatMap((s) => s.equations.flatMap((e) => e.features))
    const plain: ViewMapping = {
      mapping: MAPPINGS[view.mapping],
      frame: viewFrame(features, view.grain ?? 0),
      draughting: 0,
    }
    const draughting = draughtingInTrue(job, view, sheet, sizes.length > 0 ? startingScale(plain, sizes) : 1)
    const calibration = calibrate({ ...plain, draughting: draughting.mm }, sizes, view.name)
    return { view, calibration, ...(draughting.caution === undefined ? {} : { caution: draughting.caution }) }
  } catch (error) {
    if (error instanceof CalibrationError || error instanceof GeometryError) {
      return {
        view,
        calibration: null,
        problem: error.message,
      }
    }
    throw error
  }
}

/** The draughting error in true size: what it is on paper, over the scale of the drawing. */
function draughtingInTrue(
  job: Job,
  view: View,
  sheet: Sheet | undefined,
  mmPerPixel: number,
): { mm: number; caution?: string } {
  const stated = sheet?.draughting
  const paper =
    stated === undefined ? DEFAULT_DRAUGHTING_MM : Number(parseLength(stated, { unit: job.unit }).mm)
  if (view.drawnScale !== undefined) return { mm: paper / view.drawnScale }
  const dpi = sheet?.scan.dpi
  const mm = (paper * mmPerPixel * (dpi ?? ASSUMED_DPI)) / 25.4
  if (dpi !== undefined || paper === 0) return { mm }
  return {
    mm,
    caution: `View "${view.name}": neither its drawn scale nor the scan's dpi is known, so the draughting error was reckoned as at ${ASSUMED_DPI} dpi. State one of the two.`,
  }
}

function statedSizes(reference: Reference, job: Job, featureOf: (id: string) => Feature): StatedSize[] {
  const { id } = reference
  const size = (text: string): Uncertain => {
    const u = reference.u === undefined ? 0 : Number(parseLength(reference.u, { unit: job.unit }).mm)
    return measured(millimetres(text, job), u, `stated size of reference ${id}`)
  }
  switch (reference.kind) {
    case 'distance':
      return distanceReference(
        id,
        featureOf(reference.marks[0]),
        featureOf(reference.marks[1]),
        size(reference.size),
      )
    case 'diameter':
      return diameterReference(id, featureOf(reference.marks[0]), size(reference.size))
    case 'rectangle': {
      const [a, b, c, d] = reference.marks
      return rectangleReference(
        id,
        [featureOf(a), featureOf(b), featureOf(c), featureOf(d)],
        size(reference.width),
        size(reference.height),
        exact(0),
      )
    }
  }
}

const millimetres = (text: string, job: Job): number =>
  Number(parseLength(text, { unit: job.unit, ...(job.gauge ? { gauge: job.gauge } : {}) }).mm)
