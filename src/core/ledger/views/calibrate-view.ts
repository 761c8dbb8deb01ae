import { type Calibration, calibrate } from '../../calibration/calibrate.ts'
import { CalibrationError } from '../../calibration/calibration-error.ts'
import { stretchReference } from '../../calibration/stretch.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Sheet, View } from '../../job/model/types.ts'
import { MAPPINGS } from '../../mapping/mappings.ts'
import type { AnyReason } from '../../words/reason.ts'
import { nameKnownSizes } from './name-known-sizes.ts'
import { paperOf } from './paper.ts'
import type { PreparedView } from './prepare-view.ts'
import { type Knowing, meanStretch, type SheetStretch, witnessesFor } from './sheet-stretch.ts'
import type { StretchUse } from './stretch-use.ts'
import { uncheckedScale } from './unchecked-scale.ts'
import { unlikelyStretch } from './unlikely-stretch.ts'

/** A view of a job with its calibration, or why it has none. */
export type CalibratedView = {
  view: View
  sheet: Sheet | undefined
  /** When something had to be assumed. */
  caution?: AnyReason
  /** Why nothing checks the scale: goes on from "nothing checks this scale: ". */
  unchecked?: AnyReason
  /** By its own figured sizes alone, where others have a say in how its sheet is stretched. */
  own?: Calibration
  /** That paper seldom does what its figured sizes make of it. */
  unlikely?: AnyReason
  /** Where others have a say in how its sheet is stretched. */
  stretched?: StretchUse
} & ({ calibration: Calibration; problem?: never } | { calibration: null; problem: AnyReason })

/**
 * Calibrates a view of a job from its own figured sizes and what the other views of its sheet tell of the paper.
 * @param sheet what all views of its sheet tell, where that matters
 */
export function calibrateView(prepared: PreparedView, sheet: () => SheetStretch): CalibratedView {
  const { view, basis, caution } = prepared
  const base = { view, sheet: prepared.sheet, ...(caution === undefined ? {} : { caution }) }
  const refused = (problem: AnyReason): CalibratedView => ({
    ...base,
    calibration: null,
    problem: nameKnownSizes(problem, view.references),
  })
  if (basis === null) return refused(prepared.problem ?? fault(view))
  try {
    const stretched = mayBeTold(prepared) ? stretchFor(prepared, sheet()) : undefined
    const calibration = calibrated(prepared, basis, stretched)
    const unchecked = uncheckedScale(calibration, basis.coarse, stretched?.by === 'itself')
    const unlikely = unlikelyStretch(prepared, calibration, stretched)
    return {
      ...base,
      calibration,
      ...(stretched?.by === 'views' && prepared.twoScales !== null ? { own: prepared.twoScales } : {}),
      ...(unlikely === null ? {} : { unlikely }),
      ...(unchecked === undefined ? {} : { unchecked }),
      ...(stretched === undefined ? {} : { stretched }),
    }
  } catch (error) {
    if (error instanceof CalibrationError || error instanceof GeometryError) return refused(error.reason)
    throw error
  }
}

function fault({ id }: View): never {
  throw new RangeError(`View ${id} has neither figured sizes nor a reason why.`)
}

function calibrated(
  { view, twoScales }: PreparedView,
  { sizes, mapping }: NonNullable<PreparedView['basis']>,
  stretched: StretchUse | undefined,
): Calibration {
  if (stretched === undefined || stretched.by === 'itself') {
    return view.mapping === 'two-axis' && twoScales !== null
      ? twoScales
      : calibrate(mapping, sizes, view.name)
  }
  const twoAxis = { ...mapping, mapping: MAPPINGS['two-axis'] }
  const all = [...sizes, stretchReference(stretched.stretch)]
  return calibrate(twoAxis, all, view.name, twoScales === null ? {} : { before: twoScales })
}

/**
 * Whether the other views of its sheet have a say in a view. Where it was chosen to have one scale, and its own known
 * sizes tell of two as surely as paper does, it keeps to the choice; a sheet that is skewed or tilted is another matter.
 */
function mayBeTold({ view, sheet, basis, tells }: PreparedView): boolean {
  if (sheet === undefined || basis === null || basis.sizes.length === 0) return false
  return view.mapping === 'two-axis' || (view.mapping === 'uniform' && !tells)
}

function stretchFor(
  { view, sheet, basis, twoScales, stretch, tells }: PreparedView,
  sheetsOwn: SheetStretch,
): StretchUse | undefined {
  if (sheet === undefined || basis === null) return undefined
  const { knowing, agreeing, p, paper } = sheetsOwn
  const others = witnessesFor(view.id, sheetsOwn)
  if (p !== null && stretch !== null && has(knowing, view) && !has(agreeing, view)) {
    return { by: 'itself', names: namesOf(knowing.filter(({ id }) => id !== view.id)), p, stretch }
  }
  const told = meanStretch(others, basis.mapping.frame.grain)
  if (told !== null)
    return { by: 'views', names: namesOf(others), own: twoScales !== null && tells, stretch: told }
  // Two scales need a figured size each way, unless another view tells; where what it tells is in doubt, or where the view's
  // own sizes hardly tell, paper stands in.
  const inDoubt = view.mapping === 'two-axis' && (twoScales === null ? knowing.length > 0 : !tells)
  const allowed = (view.mapping === 'uniform' || inDoubt) && paper !== null && paperOf(sheet) > 0
  return allowed ? { by: 'paper', stretch: paper } : undefined
}

const has = (knowing: readonly Knowing[], { id }: View): boolean => knowing.some((one) => one.id === id)

const namesOf = (knowing: readonly Knowing[]): string[] => knowing.map(({ name }) => name)
