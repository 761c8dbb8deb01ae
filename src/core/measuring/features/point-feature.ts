import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { Mark, PointPick } from '../../job/model/types.ts'
import { picksOf } from '../../job/picks/picks-of.ts'
import { symmetric2 } from '../../linear-algebra/symmetric2.ts'
import { groupedObservations } from '../../uncertainty/analysis-of-variance.ts'
import { newSource, type VarianceEstimate } from '../../uncertainty/source.ts'
import { repeatedObservations } from '../../uncertainty/type-a.ts'
import type { Feature, Move } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { byPerson, byScales, meanOfPeople, peopleScatter } from './people.ts'

type PointMark = Mark & { kind: 'point' }

/** A point, from all its picks. */
export function pointFeature(mark: PointMark): Feature {
  const picks = picksOf(mark)
  const [first] = picks
  if (mark.how === 'stroke') return strokePoint(mark, picks)
  if (picks.length === 1 && first !== undefined) return feature(mark, first.pixel, statedMoves(mark, 1))
  const people = byPerson(picks)
  return people.length > 1 ? pointOfSeveral(mark, people) : pickedAgain(mark, picks)
}

function feature(mark: PointMark, pixel: Pixel, picking: Move[], told: Partial<Feature> = {}): Feature {
  return {
    mark: mark.id,
    kind: 'point',
    points: [pixel],
    closed: false,
    picking,
    draughting: draughtingOf(mark, 2),
    ...told,
  }
}

/** The axes of the covariance that was found, or of both coordinates alike, the worse first. */
const axesOf = ({ covariance, sigma }: PointMark) => symmetric2(covariance ?? [sigma ** 2, 0, sigma ** 2])

/** Moves along them. */
function statedMoves(mark: PointMark, share: number, estimate?: VarianceEstimate): Move[] {
  const label = pickingOf(mark)
  return axesOf(mark).map(({ value, vector: [x, y] }) => {
    const u = Math.sqrt(Math.max(value, 0)) * share
    return { source: newSource(label, estimate), point: 0, dx: u * x, dy: u * y }
  })
}

/** Moves of both coordinates alike, by one estimate. */
function alikeMoves(mark: PointMark, u: number, estimate: VarianceEstimate): Move[] {
  const label = pickingOf(mark)
  return [
    { source: newSource(label, estimate), point: 0, dx: u, dy: 0 },
    { source: newSource(label, estimate), point: 0, dx: 0, dy: u },
  ]
}

/** The mean of what one person picked by hand. */
function pickedAgain(mark: PointMark, picks: readonly PointPick[]): Feature {
  const { sigma } = mark
  const n = picks.length
  const x = repeatedObservations(picks.map(({ pixel }) => pixel[0]))
  const y = repeatedObservations(picks.map(({ pixel }) => pixel[1]))
  // Both coordinates are picked alike, so their scatter is one estimate with 2(n − 1) degrees of freedom.
  const s = Math.sqrt((x.s ** 2 + y.s ** 2) / 2)
  const mean = pixel(x.mean, y.mean)
  // Repeats that agree to the last digit tell nothing of the scatter: the stated sigma stands.
  if (s === 0) return feature(mark, mean, statedMoves(mark, 1 / Math.sqrt(n)))
  const estimate = { dof: 2 * (n - 1) }
  const scatter = { squares: s * s * estimate.dof, dof: estimate.dof, sigma }
  return feature(mark, mean, alikeMoves(mark, s / Math.sqrt(n), estimate), { scatter })
}

/** The mean of what each person picked. */
function pointOfSeveral(mark: PointMark, people: readonly PointPick[][]): Feature {
  const told = groupedObservations(people.map((picks) => picks.map(({ pixel }) => pixel)))
  const [x = 0, y = 0] = told.mean
  const squares = told.within.squares + told.between.squares
  if (squares === 0) return feature(mark, pixel(x, y), statedMoves(mark, Math.sqrt(told.share)))
  const scatter = { squares, dof: told.within.dof + told.between.dof, sigma: mark.sigma }
  return feature(mark, pixel(x, y), alikeMoves(mark, told.u, { dof: told.dof }), {
    scatter,
    people: peopleScatter(told),
  })
}

/** The picture is the same at every pick, so what the fit leaves open stays, however often it is done. */
function strokePoint(mark: PointMark, picks: readonly PointPick[]): Feature {
  const axes = axesOf(mark)
  // Along and across the stroke, for it is found far better across than along.
  const turned = ([x = 0, y = 0]: readonly number[]) => axes.map(({ vector: [a, b] }) => a * x + b * y)
  const scaled = byScales(axes.map(({ value }) => Math.sqrt(Math.max(value, 0))))
  const looked = {
    alike: (found: readonly number[]) => scaled(turned(found)),
    shown: (found: readonly number[]) => turned(found)[1] ?? 0,
  }
  const groups = byPerson(picks).map((own) => own.map(({ pixel }) => pixel))
  const { mean, deviations, people } = meanOfPeople(groups, looked, pickingOf(mark))
  const scatter = deviations.map(({ source, by: [dx = 0, dy = 0] }): Move => ({ source, point: 0, dx, dy }))
  const moves = [...statedMoves(mark, 1), ...scatter]
  return feature(mark, pixel(mean[0] ?? 0, mean[1] ?? 0), moves, people && { people })
}
