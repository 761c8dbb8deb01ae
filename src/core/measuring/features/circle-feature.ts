import { algebraicCircle } from '../../geometry/algebraic-circle.ts'
import { fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import type { Mark } from '../../job/model/types.ts'
import { picksOf } from '../../job/picks/picks-of.ts'
import { KNOWN } from '../../uncertainty/source.ts'
import { circleOfSeveral } from './circle-of-several.ts'
import { type OwnCircle, outwardOf, shiftedBy, shiftMoves, vectorOf } from './circles.ts'
import { everyPoint } from './every-point.ts'
import type { Feature } from './feature.ts'
import { draughtingOf, pickingOf } from './feature-sources.ts'
import { byPerson, byScales, meanOfPeople } from './people.ts'
import { NO_SCATTER } from './repeated-picks.ts'
import { roundScatter } from './round-scatter.ts'

type CircleMark = Mark & { kind: 'circle' }

/** A circle of the part is no circle on a shrunk sheet; it is fitted in true size, so every pick is kept. */
export function circleFeature(mark: CircleMark): Feature {
  const { points, picking, ...told } = own(mark)
  return {
    mark: mark.id,
    kind: 'circle',
    points,
    closed: true,
    centre: algebraicCircle(points).centre,
    picking,
    draughting: draughtingOf(mark, 3),
    ...told,
  }
}

function own(mark: CircleMark): OwnCircle {
  const picks = picksOf(mark)
  const [first] = picks
  if (picks.length === 1 && first !== undefined) return plainCircle(mark, first.pixels)
  const people = byPerson(picks).map((own) => own.map(({ pixels }) => pixels))
  if (mark.how === 'stroke') return strokeCircle(mark, first?.pixels ?? [], people)
  const each = people.map((own) => own.flat())
  if (people.length === 1) return handCircle(mark, each.flat())
  return circleOfSeveral(each, handCircle(mark, each.flat(), people.length - 1), pickingOf(mark))
}

const plainCircle = (mark: CircleMark, points: readonly Pixel[]): OwnCircle => ({
  points,
  picking: everyPoint(points.length, mark.sigma, pickingOf(mark), KNOWN),
})

/**
 * All points of all picks on one circle, their sigma from how they scatter about it.
 * @param worth degrees of freedom of that, where not all that it has
 */
function handCircle(mark: CircleMark, points: readonly Pixel[], worth?: number): OwnCircle {
  const { squares, dof } = roundScatter(points)
  const told = dof > 0 && squares / dof > NO_SCATTER
  const sigma = told ? Math.sqrt(squares / dof) : mark.sigma
  return {
    points,
    picking: everyPoint(points.length, sigma, pickingOf(mark), told ? { dof: worth ?? dof } : KNOWN),
    ...(dof > 0 ? { scatter: { squares, dof, sigma: mark.sigma } } : {}),
  }
}

/** The first pick moved to the mean of the circles found; what one fit leaves open stays. */
function strokeCircle(
  mark: CircleMark,
  first: readonly Pixel[],
  people: readonly (readonly (readonly Pixel[])[])[],
): OwnCircle {
  const fit = fitCircle(first)
  const looked = {
    alike: byScales(fit.sensitivity.map((row) => mark.sigma * Math.hypot(...row))),
    shown: ([, , radius = 0]: readonly number[]) => radius,
  }
  const groups = people.map((own) => own.map((pixels) => vectorOf(fitCircle(pixels))))
  const { mean, deviations, people: scatter } = meanOfPeople(groups, looked, pickingOf(mark))
  const outward = outwardOf(first, fit.centre)
  const from = vectorOf(fit)
  const points = shiftedBy(
    first,
    outward,
    mean.map((value, i) => value - (from[i] ?? 0)),
  )
  return {
    points,
    picking: [...plainCircle(mark, first).picking, ...shiftMoves(deviations, outward)],
    ...(scatter && { people: scatter }),
  }
}
