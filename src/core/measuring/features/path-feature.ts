import { type Pixel, pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Mark, WholePick } from '../../job/model/types.ts'
import { picksOf } from '../../job/picks/picks-of.ts'
import { groupedObservations } from '../../uncertainty/analysis-of-variance.ts'
import { KNOWN } from '../../uncertainty/source.ts'
import { meanOf } from '../../uncertainty/type-a.ts'
import { reason } from '../../words/core-words.ts'
import { everyPoint } from './every-point.ts'
import type { Feature, Move } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { byPerson, peopleScatter } from './people.ts'
import { deviationsOf, NO_SCATTER } from './repeated-picks.ts'

type PathMark = Mark & { kind: 'path' }

/** A path, point by point the mean of all its picks. */
export function pathFeature(mark: PathMark): Feature {
  const picks = picksOf(mark)
  const pixels = picks[0]?.pixels ?? []
  const { sigma, closed = false } = mark
  if (pixels.length < (closed ? 3 : 2)) {
    throw new GeometryError(reason(closed ? 'feature.closed-path-too-short' : 'feature.open-path-too-short'))
  }
  const other = picks.find((one) => one.pixels.length !== pixels.length)
  if (other !== undefined) {
    throw new GeometryError(
      reason('feature.corners-differ', { once: pixels.length, another: other.pixels.length }),
    )
  }
  const inOrder = (pick: WholePick): readonly Pixel[] => inOrderOf(pixels, pick.pixels, closed)
  const people = byPerson(picks).map((own) => own.map(inOrder))
  if (people.length > 1) return pathOfSeveral(mark, people)
  const all = people.flat()
  const n = all.length
  const points = pixels.map((_, i): Pixel => {
    const [x = 0, y = 0] = meanOf(all.map((pick) => pick[i] ?? [0, 0]))
    return pixel(x, y)
  })
  const squares = all.reduce((sum, pick) => sum + squaresBetween(pick, points), 0)
  // All corners and both coordinates are picked alike, so their scatter is one estimate.
  const dof = 2 * (n - 1) * pixels.length
  const told = dof > 0 && squares / dof > NO_SCATTER
  const s = told ? Math.sqrt(squares / dof) : sigma
  const picking = everyPoint(points.length, s / Math.sqrt(n), pickingOf(mark), told ? { dof } : KNOWN)
  return feature(mark, points, picking, told ? { scatter: { squares, dof, sigma } } : {})
}

function feature(mark: PathMark, points: readonly Pixel[], picking: Move[], told: Partial<Feature>): Feature {
  return {
    mark: mark.id,
    kind: 'path',
    points,
    closed: mark.closed ?? false,
    picking,
    draughting: draughtingOf(mark, 2 * points.length),
    ...told,
  }
}

/** Point by point the mean of what each person picked; what a person does alike at all corners moves them together. */
function pathOfSeveral(mark: PathMark, people: readonly (readonly Pixel[])[][]): Feature {
  const vectors = people.map((own) => own.map((pick) => pick.flat()))
  const told = groupedObservations(vectors)
  const points = inPoints(told.mean).map(([x, y]) => pixel(x, y))
  const squares = told.within.squares + told.between.squares
  const dof = told.within.dof + told.between.dof
  const label = pickingOf(mark)
  if (squares / dof <= NO_SCATTER) {
    return feature(
      mark,
      points,
      everyPoint(points.length, mark.sigma * Math.sqrt(told.share), label, KNOWN),
      {},
    )
  }
  const picking =
    told.by === 'all'
      ? everyPoint(points.length, told.u, label, { dof: people.length - 1 })
      : deviationsOf(told.means, label).flatMap(({ source, by }) =>
          inPoints(by).map(([dx, dy], point): Move => ({ source, point, dx, dy })),
        )
  const scatter = { squares, dof, sigma: mark.sigma }
  return feature(mark, points, picking, { scatter, people: peopleScatter(told) })
}

const inPoints = (flat: readonly number[]): [number, number][] =>
  Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i] ?? 0, flat[2 * i + 1] ?? 0])

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
