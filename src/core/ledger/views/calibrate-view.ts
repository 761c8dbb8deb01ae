import { type Calibration, calibrate } from '../../calibration/calibrate.ts'
import { CalibrationError } from '../../calibration/calibration-error.ts'
import {
  diameterReference,
  distanceReference,
  rectangleReference,
  type StatedSize,
} from '../../calibration/reference.ts'
import { startingScale } from '../../calibration/starting-scale.ts'
import { degrees, toRadians } from '../../geometry/angle-units.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import { called } from '../../job/ids/label.ts'
import type { Conventions } from '../../job/model/conventions.ts'
import { lengthContext } from '../../job/model/length-context.ts'
import type { Reference, Sheet, View } from '../../job/model/types.ts'
import { MAPPINGS } from '../../mapping/mappings.ts'
import { viewFrame } from '../../mapping/view-frame.ts'
import type { ViewMapping } from '../../mapping/view-mapping.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { finestInUse, fractionOf, graduationOf } from '../../quantity/graduation.ts'
import type { Length } from '../../quantity/length.ts'
import { parseKnownSize } from '../../quantity/parse/parse-known-size.ts'
import { parseLength } from '../../quantity/parse/parse-length.ts'
import { exact, measured, type Uncertain } from '../../uncertainty/uncertain.ts'
import { nameItemsIn } from '../../words/name-in.ts'
import type { AnyReason } from '../../words/reason.ts'
import { draughtingInTrue } from './draughting.ts'
import { uncheckedScale } from './unchecked-scale.ts'

/** A view of a job with its calibration, or why it has none. */
export type CalibratedView = {
  view: View
  sheet: Sheet | undefined
  /** When something had to be assumed. */
  caution?: AnyReason
  /** Why nothing checks the scale: goes on from "nothing checks this scale: ". */
  unchecked?: AnyReason
} & ({ calibration: Calibration; problem?: never } | { calibration: null; problem: AnyReason })

/** What a view is calibrated with: nothing else of the job may come into it. */
export interface ViewContext {
  conventions: Conventions
  sheet: Sheet | undefined
  /** Throws GeometryError when the mark determines no feature. */
  featureOf(id: string): Feature
}

/** Calibrates a view of a job. */
export function calibrateView(view: View, context: ViewContext): CalibratedView {
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
    const calibration = calibrate({ ...plain, draughting: draughting.mm }, sizes, view.name)
    const unchecked = uncheckedScale(calibration, draughting.coarse)
    return { view, sheet, calibration, ...cautioned(), ...(unchecked === undefined ? {} : { unchecked }) }
  } catch (error) {
    if (error instanceof CalibrationError || error instanceof GeometryError) {
      return {
        view,
        sheet,
        calibration: null,
        problem: nameItemsIn(error.reason, view.references),
        ...cautioned(),
      }
    }
    throw error
  }
}

/** Reads the figures of known sizes. */
interface FigureReader {
  size(text: string): Uncertain
  /** mm */
  graduation(text: string): number
}

/** The known sizes of a view as the calibration takes them. */
function statedSizes(
  references: readonly Reference[],
  { conventions, featureOf }: ViewContext,
): StatedSize[] {
  const { unit } = conventions
  const context = lengthContext(conventions)
  const finest = finestInUse(
    references.flatMap((one) =>
      figuresOf(one).flatMap((text) => fractionOf(parseKnownSize(text, one.kind, context))),
    ),
  )
  return references.flatMap((reference) => {
    const label = `size stated for ${called('known size', reference)}`
    const read = (text: string): Length => parseKnownSize(text, reference.kind, context)
    const u = reference.u === undefined ? 0 : Number(parseLength(reference.u, { unit }).mm)
    return statedSizesOf(reference, featureOf, {
      size: (text) => measured(Number(read(text).mm), u, label),
      graduation: (text) => graduationOf(read(text), finest),
    })
  })
}

function statedSizesOf(
  reference: Reference,
  featureOf: ViewContext['featureOf'],
  { size, graduation }: FigureReader,
): StatedSize[] {
  const { id } = reference
  switch (reference.kind) {
    case 'distance': {
      const [a, b] = reference.marks
      const text = reference.size
      return distanceReference(id, featureOf(a), featureOf(b), size(text), graduation(text))
    }
    case 'diameter': {
      const [circle] = reference.marks
      return diameterReference(id, featureOf(circle), size(reference.size), graduation(reference.size))
    }
    case 'rectangle': {
      const [a, b, c, d] = reference.marks
      const { width, height } = reference
      return rectangleReference(
        id,
        [featureOf(a), featureOf(b), featureOf(c), featureOf(d)],
        size(width),
        size(height),
        exact(0),
        [graduation(width), graduation(height)],
      )
    }
  }
}

const figuresOf = (reference: Reference): string[] =>
  reference.kind === 'rectangle' ? [reference.width, reference.height] : [reference.size]
