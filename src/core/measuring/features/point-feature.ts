import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { Mark } from '../../job/model/types.ts'
import { symmetric2 } from '../../linear-algebra/symmetric2.ts'
import { newSource, type VarianceEstimate } from '../../uncertainty/source.ts'
import { repeatedObservations } from '../../uncertainty/type-a.ts'
import type { Feature, Move } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { deviationsOf, meanOf } from './repeated-picks.ts'

type PointMark = Mark & { kind: 'point' }

/** A point, from all its picks. */
export function pointFeature(mark: PointMark): Feature {
  return mark.how === 'stroke' ? strokePoint(mark) : handPoint(mark)
}

function feature(mark: PointMark, pixel: Pixel, picking: Move[], scatter?: Feature['scatter']): Feature {
  return {
    mark: mark.id,
    kind: 'point',
    points: [pixel],
    closed: false,
    picking,
    draughting: draughtingOf(mark, 2),
    ...(scatter === undefined ? {} : { scatter }),
  }
}

/** Moves along the axes of the covariance that was found, or of both coordinates alike. */
function statedMoves(mark: PointMark, share: number, estimate?: VarianceEstimate): Move[] {
  const label = pickingOf(mark)
  const { covariance, sigma } = mark
  const axes = symmetric2(covariance ?? [sigma ** 2, 0, sigma ** 2])
  return axes.map(({ value, vector: [x, y] }) => {
    const u = Math.sqrt(Math.max(value, 0)) * share
    return { source: newSource(label, estimate), point: 0, dx: u * x, dy: u * y }
  })
}

function handPoint(mark: PointMark): Feature {
  const { pixel: first, repeats = [], sigma } = mark
  const n = repeats.length + 1
  if (n === 1) return feature(mark, first, statedMoves(mark, 1))
  const x = repeatedObservations([first, ...repeats].map((p) => p[0]))
  const y = repeatedObservations([first, ...repeats].map((p) => p[1]))
  // Both coordinates are picked alike, so their scatter is one estimate with 2(n − 1) degrees of freedom.
  const s = Math.sqrt((x.s ** 2 + y.s ** 2) / 2)
  const mean = pixel(x.mean, y.mean)
  // Repeats that agree to the last digit tell nothing of the scatter: the stated sigma stands.
  if (s === 0) return feature(mark, mean, statedMoves(mark, 1 / Math.sqrt(n)))
  const estimate = { dof: 2 * (n - 1) }
  const label = pickingOf(mark)
  const u = s / Math.sqrt(n)
  const picking = [
    { source: newSource(label, estimate), point: 0, dx: u, dy: 0 },
    { source: newSource(label, estimate), point: 0, dx: 0, dy: u },
  ]
  return feature(mark, mean, picking, { squares: s * s * estimate.dof, dof: estimate.dof, sigma })
}

/** The picture is the same at every pick, so what the fit leaves open stays, however often it is done. */
function strokePoint(mark: PointMark): Feature {
  const picks = [mark.pixel, ...(mark.repeats ?? [])]
  const mean = meanOf(picks)
  const scatter = deviationsOf(picks, pickingOf(mark)).map(
    ({ source, by: [dx = 0, dy = 0] }): Move => ({ source, point: 0, dx, dy }),
  )
  return feature(mark, pixel(mean[0] ?? 0, mean[1] ?? 0), [...statedMoves(mark, 1), ...scatter])
}
