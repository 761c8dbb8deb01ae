import { type Pixel, pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Mark } from '../../job/model/types.ts'
import { KNOWN } from '../../uncertainty/source.ts'
import { reason } from '../../words/core-words.ts'
import { everyPoint } from './every-point.ts'
import type { Feature } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { meanOf, NO_SCATTER } from './repeated-picks.ts'

type PathMark = Mark & { kind: 'path' }

/** A path, point by point the mean of all its picks. */
export function pathFeature(mark: PathMark): Feature {
  const { pixels, repeats = [], sigma, closed = false } = mark
  if (pixels.length < (closed ? 3 : 2)) {
    throw new GeometryError(reason(closed ? 'feature.closed-path-too-short' : 'feature.open-path-too-short'))
  }
  const other = repeats.find((one) => one.length !== pixels.length)
  if (other !== undefined) {
    throw new GeometryError(reason('feature.corners-differ', { once: pixels.length, another: other.length }))
  }
  const n = repeats.length + 1
  const picks = [pixels, ...repeats.map((one) => inOrderOf(pixels, one, closed))]
  const points = pixels.map((_, i): Pixel => {
    const [x = 0, y = 0] = meanOf(picks.map((pick) => pick[i] ?? [0, 0]))
    return pixel(x, y)
  })
  const squares = picks.reduce((sum, pick) => sum + squaresBetween(pick, points), 0)
  // All corners and both coordinates are picked alike, so their scatter is one estimate.
  const dof = 2 * (n - 1) * pixels.length
  const told = dof > 0 && squares / dof > NO_SCATTER
  const s = told ? Math.sqrt(squares / dof) : sigma
  return {
    mark: mark.id,
    kind: 'path',
    points,
    closed,
    picking: everyPoint(points.length, s / Math.sqrt(n), pickingOf(mark), told ? { dof } : KNOWN),
    draughting: draughtingOf(mark, 2 * points.length),
    ...(told ? { scatter: { squares, dof, sigma } } : {}),
  }
}

const squaresBetween = (a: readonly Pixel[], b: readonly Pixel[]): number =>
  a.reduce((sum, [x, y], i) => sum + (x - (b[i]?.[0] ?? x)) ** 2 + (y - (b[i]?.[1] ?? y)) ** 2, 0)

/** A pick in the order of the first one: it may have been begun at another corner, or gone round the other way. */
function inOrderOf(first: readonly Pixel[], pick: readonly Pixel[], closed: boolean): Pixel[] {
  const shifts = closed ? pick.map((_, k) => k) : [0]
  const orders = [pick, [...pick].reverse()].flatMap((way) =>
    shifts.map((k) => [...way.slice(k), ...way.slice(0, k)]),
  )
  return orders.reduce((best, one) => (squaresBetween(one, first) < squaresBetween(best, first) ? one : best))
}
