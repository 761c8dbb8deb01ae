import { type CircleFit, fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import { compareSquares } from '../../uncertainty/analysis-of-variance.ts'
import { meanOf } from '../../uncertainty/type-a.ts'
import { type OwnCircle, outwardOf, shiftedBy, shiftMoves, vectorOf } from './circles.ts'
import { freedOfOval } from './common-oval.ts'
import type { PeopleScatter } from './people.ts'
import { deviationsOf } from './repeated-picks.ts'

/**
 * A circle that several people picked by hand. How far each person's circle lies from the others' is held against how
 * the person's points lie about their own. Where it is more, the mean of the circles is taken, to which the points of
 * each are moved, and its scatter says how sure it is; else all points as one person's. Either is worth as many degrees
 * of freedom as people but one. A sheet that shrank more one way shows the same oval to all of them, which is taken out
 * before they are compared.
 * @param people the points of each person
 * @param asOne the circle through all points as if one person had picked them, worth so many
 */
export function circleOfSeveral(
  people: readonly (readonly Pixel[])[],
  asOne: OwnCircle,
  label: string,
): OwnCircle {
  const own = circlesOf(people)
  // Where somebody's points are on no circle of their own, nobody's can be compared.
  if (own === null) return asOne
  const freed = freedOfOval(people, own)
  const circles = freed.people.map((points) => fitCircle(points))
  const all = fitCircle(freed.people.flat())
  const dof = all.n - 3 * people.length - freed.numbers
  const within = {
    squares: circles.reduce((sum, { squares }) => sum + squares, 0),
    dof: Math.max(0, dof),
  }
  const rank = 3 * (people.length - 1)
  const { f, p } = compareSquares(within, { squares: Math.max(0, all.squares - within.squares), dof: rank })
  const sigma = within.dof === 0 ? null : Math.sqrt(within.squares / within.dof)
  const told: PeopleScatter = {
    n: people.length,
    s: Math.sqrt(all.squares / Math.max(1, dof + rank)),
    within: sigma,
    between: sigma === null ? null : beyond(circles, sigma),
    p,
    by: f !== null && f > 1 ? 'groups' : 'all',
  }
  const made = told.by === 'groups' ? { ...asOne, ...meanCircle(people, circles, label) } : asOne
  return { ...made, people: told }
}

/** The circle of each person; null where the points of one of them determine none. */
function circlesOf(people: readonly (readonly Pixel[])[]): CircleFit<Pixel>[] | null {
  try {
    return people.map((points) => fitCircle(points))
  } catch (error) {
    if (error instanceof GeometryError) return null
    throw error
  }
}

/** The points of each person moved to the mean of all circles, which is as sure as these scatter. */
function meanCircle(
  people: readonly (readonly Pixel[])[],
  circles: readonly CircleFit<Pixel>[],
  label: string,
): Pick<OwnCircle, 'points' | 'picking'> {
  const lies = circles.map(vectorOf)
  const mean = meanOf(lies)
  const moved = circles.map((circle, j) => {
    const own = people[j] ?? []
    const outward = outwardOf(own, circle.centre)
    const by = vectorOf(circle).map((value, i) => (mean[i] ?? 0) - value)
    return { outward, points: shiftedBy(own, outward, by) }
  })
  return {
    points: moved.flatMap(({ points }) => points),
    picking: shiftMoves(
      deviationsOf(lies, label),
      moved.flatMap(({ outward }) => outward),
    ),
  }
}

/** Standard deviation of people's radii, beyond what each person's own points leave open. */
function beyond(
  circles: readonly { radius: number; sensitivity: readonly (readonly number[])[] }[],
  within: number,
): number {
  const mean = circles.reduce((sum, { radius }) => sum + radius, 0) / circles.length
  const apart = circles.reduce((sum, { radius }) => sum + (radius - mean) ** 2, 0) / (circles.length - 1)
  const own =
    circles.reduce((sum, { sensitivity }) => {
      const u = within * Math.hypot(...(sensitivity[2] ?? []))
      return sum + u * u
    }, 0) / circles.length
  return Math.sqrt(Math.max(0, apart - own))
}
