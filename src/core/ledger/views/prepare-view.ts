import { type Calibration, calibrate } from '../../calibration/calibrate.ts'
import { CalibrationError } from '../../calibration/calibration-error.ts'
import type { StatedSize } from '../../calibration/reference.ts'
import { startingScale } from '../../calibration/starting-scale.ts'
import { uncertainStretch } from '../../calibration/stretch.ts'
import { degrees, toRadians } from '../../geometry/angle-units.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import type { Sheet, View } from '../../job/model/types.ts'
import { MAPPINGS } from '../../mapping/mappings.ts'
import { viewFrame } from '../../mapping/view-frame.ts'
import type { ViewMapping } from '../../mapping/view-mapping.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { standardUncertainty } from '../../uncertainty/covariance.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import type { AnyReason } from '../../words/reason.ts'
import { draughtingInTrue } from './draughting.ts'
import { paperOf } from './paper.ts'
import { statedSizes } from './stated-sizes.ts'
import type { CoarseCheck } from './unchecked-scale.ts'

/** What a view is prepared with: nothing else of the job may come into it. */
export interface ViewContext {
  conventions: Conventions
  sheet: Sheet | undefined
  /** Throws GeometryError when the mark determines no feature. */
  featureOf(id: string): Feature
}

/** A view as its own figured sizes have it, before the other views of its sheet are heard. */
export interface PreparedView {
  view: View
  sheet: Sheet | undefined
  /** When something had to be assumed. */
  caution?: AnyReason
  /** Why it can't be calibrated whatever the others say. */
  problem?: AnyReason
  /** What it is calibrated from; null with a problem. */
  basis: { sizes: readonly StatedSize[]; mapping: ViewMapping; coarse: CoarseCheck } | null
  /** With a scale along and one across by its own figured sizes; null where they do not determine both. */
  twoScales: Calibration | null
  /** How the sheet is stretched by that. */
  stretch: Uncertain | null
  /**
   * Whether it tells how the sheet is stretched: one with a scale along and one across where it determines both well enough
   * to be worth having, one with a single scale where it does so as surely as paper does.
   */
  tells: boolean
}

/** Reads the figured sizes of a view, and how far they tell how the sheet is stretched. */
export function prepareView(view: View, context: ViewContext): PreparedView {
  const { sheet } = context
  let caution: AnyReason | undefined
  const cautioned = () => (caution === undefined ? {} : { caution })
  try {
    const sizes = statedSizes(view.references, context)
    const features = sizes.flatMap((s) => s.equations.flatMap((e) => e.features))
    const plain: ViewMapping = {
      mapping: MAPPINGS[view.mapping],
      frame: viewFrame(features, toRadians(view.grain ?? degrees(0))),
      draughting: 0,
    }
    const draughting = draughtingInTrue(
      context.conventions.unit,
      view,
      sheet,
      sizes.length > 0 ? startingScale(plain, sizes) : 1,
    )
    if (sizes.length > 0) caution = draughting.caution
    const mapping = { ...plain, draughting: draughting.mm }
    const basis = { sizes, mapping, coarse: draughting.coarse }
    return { view, sheet, basis, ...ownStretch(view, sheet, mapping, sizes), ...cautioned() }
  } catch (error) {
    if (error instanceof CalibrationError || error instanceof GeometryError) {
      return { view, sheet, basis: null, problem: error.reason, ...NOTHING_TOLD, ...cautioned() }
    }
    throw error
  }
}

type Told = Pick<PreparedView, 'twoScales' | 'stretch' | 'tells'>

const NOTHING_TOLD: Told = { twoScales: null, stretch: null, tells: false }

/**
 * A stretch that is known worse than so many times what paper does is none: circles about one centre, or sizes that run
 * nearly one way, differ along and across by their picks alone.
 */
const WORTH_HAVING = 2

/** A sheet that is laid flat stretches along and across; one that is skewed or tilted says nothing of its paper. */
function ownStretch(
  view: View,
  sheet: Sheet | undefined,
  mapping: ViewMapping,
  sizes: readonly StatedSize[],
): Told {
  if (sheet === undefined || (view.mapping !== 'uniform' && view.mapping !== 'two-axis')) return NOTHING_TOLD
  const paper = paperOf(sheet)
  try {
    const twoAxis = { ...mapping, mapping: MAPPINGS['two-axis'] }
    const twoScales = calibrate(twoAxis, sizes, view.name, { paper })
    const stretch = uncertainStretch(twoScales.view.mapping, twoScales.theta)
    const most =
      view.mapping === 'two-axis' ? (paper > 0 ? WORTH_HAVING * paper : Number.POSITIVE_INFINITY) : paper
    const tells = standardUncertainty(stretch) <= most
    return { twoScales, stretch, tells }
  } catch (error) {
    if (error instanceof CalibrationError || error instanceof GeometryError) return NOTHING_TOLD
    throw error
  }
}
