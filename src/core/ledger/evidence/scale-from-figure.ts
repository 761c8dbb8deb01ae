import type { Calibration } from '../../calibration/calibrate.ts'
import type { Equation } from '../../calibration/reference.ts'
import { isLength } from '../../calibration/stretch.ts'
import type { Pixel } from '../../geometry/frames.ts'
import type { Measure } from '../../job/model/types.ts'
import { element } from '../../linear-algebra/element.ts'
import type { Feature } from '../../measuring/features/feature-of-mark.ts'
import { MEASURES } from '../../measuring/measures/measures.ts'
import { observe } from '../../measuring/propagate-measure.ts'

/** Two figures are one where they differ by less than this share of them. */
const SAME_FIGURE = 1e-9
/** Ends that lie so near to those of a figured size are taken for the same, as a share of it. Common practice, no source. */
const SAME_ENDS = 0.02
/** At least, pixels. */
const NEAREST = 5

/** Figured sizes of a view that were written down alike, by their true size; of each calibration once. */
const SIZES = new WeakMap<Calibration, readonly Known[]>()

interface Known {
  equation: Equation
  /** Its place among the equations of the calibration. */
  row: number
}

/**
 * How much of a scaled value moves with the figure of a figured size of its view, as a share of what the figure moves by:
 * 1 where the scale rests on that figure alone, so that the value follows it, right or wrong. 0 where the figure is no
 * figured size of the view between the same ends.
 * @param mm the figure
 */
export function shareOfFigure(
  calibration: Calibration,
  measure: Measure,
  features: readonly Feature[],
  mm: number,
): number {
  const same = knownSizes(calibration).filter(
    ({ equation }) =>
      Math.abs(equation.stated.value - mm) <= SAME_FIGURE * mm && endsMeet(equation.features, features),
  )
  if (same.length === 0) return 0
  const theta = calibration.theta.map(({ value }) => value)
  const { byParameter } = observe(calibration.view, theta, features, MEASURES[measure])
  return byParameter.reduce(
    (sum, by, k) => sum + by * same.reduce((gain, { row }) => gain + calibration.gain.get(k, row), 0),
    0,
  )
}

function knownSizes(calibration: Calibration): readonly Known[] {
  const before = SIZES.get(calibration)
  if (before !== undefined) return before
  let row = 0
  const known = calibration.used.flatMap((size) =>
    size.equations.flatMap((equation) => {
      const own = { equation, row: row++ }
      return isLength(size) && size.part !== 'squareness' ? [own] : []
    }),
  )
  SIZES.set(calibration, known)
  return known
}

type XY = readonly [x: number, y: number]

/** Whether a measure runs between the ends of a figured size, or others of the same edges, or goes round the same circle. */
function endsMeet(known: readonly Feature[], measured: readonly Feature[]): boolean {
  const [a, b] = known.map(middleOf)
  const [p, q] = measured.map(middleOf)
  if (a === undefined || p === undefined || known.length !== measured.length) return false
  if (b === undefined || q === undefined) return apart(a, p) <= reach(2 * radiusOf(element(known, 0)))
  const length = apart(a, b)
  // Along the figured size: another place of the same two edges is the same size.
  const along = ([x, y]: XY): number => ((x - a[0]) * (b[0] - a[0]) + (y - a[1]) * (b[1] - a[1])) / length
  const [from, to] = [along(p), along(q)].sort((one, other) => one - other)
  return (
    Math.abs(from ?? Number.NaN) <= reach(length) && Math.abs((to ?? Number.NaN) - length) <= reach(length)
  )
}

const reach = (length: number): number => Math.max(NEAREST, SAME_ENDS * length)

const apart = ([x, y]: XY, [u, v]: XY): number => Math.hypot(x - u, y - v)

function middleOf({ points, centre }: Feature): XY {
  return centre ?? mean(points)
}

const mean = (points: readonly Pixel[]): XY => {
  const sum = points.reduce<XY>(([x, y], [u, v]) => [x + u, y + v], [0, 0])
  return [sum[0] / points.length, sum[1] / points.length]
}

/** Of a circle, pixels; of anything else how far its first point is from its middle. */
const radiusOf = (feature: Feature): number => apart(middleOf(feature), mean(feature.points.slice(0, 1)))
