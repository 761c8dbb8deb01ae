import { type Pixel, pixel } from '../geometry/frames.ts'
import type { AcceptedStroke } from './accept/acceptance.ts'
import { followBend } from './detect/bend-detector.ts'
import { detectPoint } from './detect/point-detector.ts'
import { meanUnit } from './fit/piece-centres.ts'
import { guessAt } from './fit/strip-equations.ts'
import { bilevelEdgeVariance } from './noise/bilevel-edge.ts'
import { centreSigma } from './noise/centre-sigma.ts'
import { sectionOf } from './result/mean-section.ts'
import { edgeShift } from './result/stroke-edge.ts'
import { profilesOf, roundingShift, shapeOf } from './result/stroke-result.ts'
import type { NoStroke, PointOptions, StrokePoint } from './result/stroke-types.ts'
import { isBilevel } from './window/bilevel.ts'
import type { GreyWindow } from './window/grey-window.ts'

/**
 * The place on a stroke that is nearest to where it was pointed at.
 * @param grey of the scan, at least what `searchWindow` says; rough: pixels of the scan, within `reach` (8 px) of the
 * stroke, counted from its edge when it is wide
 * @returns the foot of the rough place on the stroke, or why there is none. About 32 px of the stroke's length are used.
 */
export function findPoint(
  grey: GreyWindow,
  rough: Pixel,
  { reading = 'centre', ...options }: PointOptions = {},
): StrokePoint | NoStroke {
  const found = detectPoint(grey, rough, options)
  if ('because' in found) return found
  return tellPoint(grey, rough, followBend(grey, found, { share: 0.45, length: 12 }), reading)
}

function tellPoint(
  grey: GreyWindow,
  rough: Pixel,
  { traced, inflation }: AcceptedStroke,
  wanted: NonNullable<PointOptions['reading']>,
): StrokePoint {
  const { strip, fit, judged, centres } = traced
  const { curve } = strip
  const at = new Float64Array(2)
  curve.locate(rough[0], rough[1], at)
  const along = Math.min(Math.max(at[0] as number, 0), curve.length)
  const [nx, ny] = curve.across(along)
  const onward =
    curve.curvature === 0
      ? 1
      : Math.sign(crossOf(curve.place(0, 0), curve.place(curve.length, 0), pixel(nx, ny)))
  const values = new Float64Array(4)
  curve.basis(along, values, new Float64Array(4))
  let offset = 0
  for (let j = 0; j < curve.parameters; j++) offset += (values[j] as number) * (fit.parameters[j] as number)
  let [dx, dy] = [ny * onward, -nx * onward]
  let towards = onward
  if (dx < -1e-9 || (Math.abs(dx) <= 1e-9 && dy < 0)) {
    dx = -dx
    dy = -dy
    towards = -towards
  }
  const direction = Math.atan2(dy, dx)
  const reading = typeof wanted === 'string' ? wanted : wanted(direction)
  const edge = edgeShift(reading, traced, inflation)
  const shift = towards * edge.shift
  const residuals = centres.flatMap((c, k) =>
    c !== null && judged.kept[k] ? [c.offset - guessAt(strip, k, fit).offset] : [],
  )
  const own = centreSigma(traced, inflation, residuals, residuals.length - curve.parameters)
  let variance =
    (own ** 2 / meanUnit(centres, judged.kept)) * unitVariance(values, fit.inverse, curve.parameters)
  if (isBilevel(grey)) {
    const length = strip.pieces.reduce((s, p, k) => s + (judged.kept[k] ? p.to - p.from : 0), 0)
    const ofEdge = bilevelEdgeVariance(length, [nx, ny])
    variance = Math.max(variance, ofEdge * (reading === 'centre' ? 0.5 : 1))
  }
  variance += edge.variance
  return {
    kind: 'point',
    reading,
    pixel: curve.place(along, offset + shift - roundingShift(traced)),
    across: Math.sqrt(variance),
    direction,
    shape: shapeOf(traced),
    section: sectionOf(traced, shift),
    profiles: profilesOf(traced, shift, own),
  }
}

/** Above 0 when across is to the right as one goes from one place to the other. */
const crossOf = (from: Pixel, to: Pixel, [nx, ny]: Pixel): number => {
  const right: Pixel = pixel(-(to[1] - from[1]), to[0] - from[0])
  return right[0] * nx + right[1] * ny || 1
}

function unitVariance(values: Float64Array, inverse: Float64Array, n: number): number {
  const m = Math.sqrt(inverse.length)
  let sum = 0
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      sum += (values[i] as number) * (values[j] as number) * (inverse[i * m + j] as number)
  return sum
}
