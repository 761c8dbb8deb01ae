import { fitCircle } from '../geometry/fit-circle.ts'
import { type Pixel, pixel } from '../geometry/frames.ts'
import { detectCircle } from './detect/circle-detector.ts'
import { isReason, searchContext } from './detect/detector.ts'
import { centreSigma } from './noise/centre-sigma.ts'
import { meanSection } from './result/mean-section.ts'
import { roundResiduals } from './result/round-residuals.ts'
import { edgeShift } from './result/stroke-edge.ts'
import { noStroke, profilesOf, shapeOf } from './result/stroke-result.ts'
import type { NoStroke, RoundOptions, StrokeCircle } from './result/stroke-types.ts'
import type { GreyPicture } from './window/grey-picture.ts'

/**
 * The round stroke near three places: the whole circle, or the arc from the first through the second to the third.
 * @param grey of the scan, at least what `searchWindow` says; three: pixels of the scan, each within `reach` (8 px) of
 * the stroke, as far apart as may be
 * @returns the geometric least-squares circle through the centres of its pieces, or why there is none. Paper that has
 * shrunk more one way than the other makes an ellipse of a whole circle: from a radius of 30 px on, what belongs to the
 * stroke, and sigma, are judged about that; below, its scatter about the circle is in sigma. `outOfRound`
 * tells by how much.
 */
export function findCircle(
  grey: GreyPicture,
  three: [Pixel, Pixel, Pixel],
  { reach, reading = 'centre', ink, whole = true }: RoundOptions = {},
): StrokeCircle | NoStroke {
  const found = detectCircle(searchContext(grey, { reach, ink }), three, whole)
  if (isReason(found)) return noStroke(found)
  const { traced, inflation } = found
  const { shift, variance: common } = edgeShift(reading, traced, inflation)
  const kept = profilesOf(traced, shift, 0).filter((p) => p.kept)
  const places = kept.map((p) => p.centre)
  const { centre, radius, sensitivity } = fitCircle(places)
  const { residuals, freedoms } = roundResiduals(traced, places, [centre[0], centre[1]], radius)
  const own = centreSigma(traced, inflation, residuals, freedoms)
  const sigma = Math.sqrt(own ** 2 + kept.length * common)
  const product = (a: readonly number[], b: readonly number[]) =>
    sigma ** 2 * a.reduce((s, v, i) => s + v * (b[i] ?? 0), 0)
  const [x, y, r] = sensitivity
  return {
    kind: whole ? 'circle' : 'arc',
    reading,
    centre: pixel(centre[0], centre[1]),
    radius,
    sigma,
    covariance: [product(x, x), product(x, y), product(x, r), product(y, y), product(y, r), product(r, r)],
    shape: shapeOf(traced),
    section: meanSection(traced, shift),
    profiles: profilesOf(traced, shift, sigma),
  }
}
