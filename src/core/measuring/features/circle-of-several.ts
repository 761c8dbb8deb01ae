import { type CircleFit, fitCircle } from '../../geometry/fit-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { compareSquares } from '../../uncertainty/analysis-of-variance.ts'
import { meanOf } from '../../uncertainty/type-a.ts'
import { type OwnCircle, outwardOf, shiftedBy, shiftMoves, vectorOf } from './circles.ts'
import type { PeopleScatter } from './people.ts'
import { deviationsOf } from './repeated-picks.ts'
import { freedOfOval } from './round-scatter.ts'

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
  const round = freedOfOval(people.flat())
  const sizes = people.map(({ length }) => length)
  const circles = inGroups(round.points, sizes).map((points) => fitCircle(points))
  const all = fitCircle(round.points)
  const rank = Math.min(3 * (people.length - 1), round.dof)
  const own = { squares: circles.reduce((sum, fit) => sum + fit.squares, 0), dof: round.dof - rank }
  const more = { squares: Math.max(0, all.squares - own.squares), dof: rank }
  const { f, p } = compareSquares(own, more)
  const within = own.dof === 0 ? null : Math.sqrt(own.squares / own.dof)
  const scatter: PeopleScatter = {
    n: people.length,
    s: round.dof === 0 ? 0 : Math.sqrt(all.squares / round.dof),
    within,
    between: within === null ? null : beyond(circles, within),
    p,
    by: f !== null && f > 1 ? 'groups' : 'all',
  }
  return scatter.by === 'all'
    ? { ...asOne, people: scatter }
    : { ...asOne, ...meanCircle(people, circles, label), people: scatter }
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

function inGroups(points: readonly Pixel[], sizes: readonly number[]): Pixel[][] {
  let from = 0
  return sizes.map((size) => {
    from += size
    return points.slice(from - size, from)
  })
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
