import type { Pixel } from '../geometry/frames.ts'
import * as elements from '../linear-algebra/elements-unchecked.ts'
import type { AcceptedStroke } from './accept/acceptance.ts'
import { followBend } from './detect/bend-detector.ts'
import { isReason, searchContext } from './detect/detector.ts'
import { detectPoint } from './detect/point-detector.ts'
import { meanUnit } from './fit/piece-centres.ts'
import { bilevelEdgeVariance } from './noise/bilevel-edge.ts'
import { centreSigma } from './noise/centre-sigma.ts'
import { pixelPhaseVariance } from './noise/pixel-phase.ts'
import { meanSection } from './result/mean-section.ts'
import { residualsOfFit } from './result/round-residuals.ts'
import { edgeShift } from './result/stroke-edge.ts'
import { noStroke, profilesOf, roundingShift, shapeOf } from './result/stroke-result.ts'
import type { NoStroke, PointOptions, StrokePoint } from './result/stroke-types.ts'
import type { ReferenceCurve } from './strip/reference-curve.ts'
import { isBilevel } from './window/bilevel.ts'
import type { GreyPicture } from './window/grey-picture.ts'

const { f64 } = elements

/**
 * The place on a stroke that is nearest to where it was pointed at.
 * @param grey of the scan, at least what `searchWindow` says; rough: pixels of the scan, within `reach` (8 px) of the
 * stroke, counted from its edge when it is wide
 * @returns the foot of the rough place on the stroke, or why there is none. About 32 px of the stroke's length are used.
 */
export function findPoint(
  grey: GreyPicture,
  rough: Pixel,
  { reach, reading = 'centre', ink }: PointOptions = {},
): StrokePoint | NoStroke {
  const found = detectPoint(searchContext(grey, { reach, ink }), rough)
  if (isReason(found)) return noStroke(found)
  return tellPoint(grey, rough, followBend(grey, found, { share: 0.45, length: 12 }), reading)
}

function tellPoint(
  grey: GreyPicture,
  rough: Pixel,
  { traced, inflation }: AcceptedStroke,
  wanted: NonNullable<PointOptions['reading']>,
): StrokePoint {
  const { strip, fit, judged, centres } = traced
  const { curve } = strip
  const at = { along: Number.NaN, across: Number.NaN }
  curve.locate(rough[0], rough[1], at)
  const along = Math.min(Math.max(at.along, 0), curve.length)
  const { values } = curve.basisAt(along)
  const offset = values.reduce((sum, value, j) => sum + value * f64(fit.parameters, j), 0)
  const { direction, towards } = told(curve, along)
  const reading = typeof wanted === 'string' ? wanted : wanted(direction)
  const edge = edgeShift(reading, traced, inflation)
  const shift = towards * edge.shift
  const residuals = residualsOfFit(traced)
  const own = centreSigma(traced, inflation, residuals, residuals.length - curve.parameters)
  let variance = (own ** 2 / meanUnit(centres, judged.kept)) * unitVariance(values, fit.inverse)
  const length = strip.pieces.reduce((s, p, k) => s + (judged.kept[k] ? p.to - p.from : 0), 0)
  const [nx, ny] = curve.across(along)
  if (isBilevel(grey)) {
    const ofEdge = bilevelEdgeVariance(length, [nx, ny])
    variance = Math.max(variance, ofEdge * (reading === 'centre' ? 0.5 : 1))
  } else if (curve.curvature === 0) variance += pixelPhaseVariance(fit.width, length, [nx, ny])
  variance += edge.variance
  return {
    kind: 'point',
    reading,
    pixel: curve.place(along, offset + shift - roundingShift(traced)),
    across: Math.sqrt(variance),
    direction,
    shape: shapeOf(traced),
    section: meanSection(traced, shift),
    profiles: profilesOf(traced, shift, own),
  }
}

/**
 * The direction in which a stroke is told to run, towards the right of the scan or down it where it is upright; and
 * whether across its curve is then towards the right of the stroke, 1, or the left, −1.
 */
function told(curve: ReferenceCurve, along: number): { direction: number; towards: number } {
  const [nx, ny] = curve.across(along)
  const isRight = curve.curvature === 0 ? 1 : Math.sign(rightward(curve, [nx, ny]))
  const [dx, dy] = [ny * isRight, -nx * isRight]
  const back = dx < -1e-9 || (Math.abs(dx) <= 1e-9 && dy < 0)
  return back
    ? { direction: Math.atan2(-dy, -dx), towards: -isRight }
    : { direction: Math.atan2(dy, dx), towards: isRight }
}

/** Above 0 when across is to the right as one goes from the curve's start to its end. */
function rightward(curve: ReferenceCurve, [nx, ny]: readonly [number, number]): number {
  const from = curve.place(0, 0)
  const to = curve.place(curve.length, 0)
  return -(to[1] - from[1]) * nx + (to[0] - from[0]) * ny || 1
}

/** Variance of the place across for noise of variance 1. @param inverse of the normal equations, the curve's parameters first */
function unitVariance(values: Float64Array, inverse: Float64Array): number {
  const m = Math.sqrt(inverse.length)
  return values.reduce(
    (sum, vi, i) => sum + values.reduce((row, vj, j) => row + vi * vj * f64(inverse, i * m + j), 0),
    0,
  )
}
