import { fitCircle } from '../../geometry/fit-circle.ts'
import type { Mark } from '../../job/model/types.ts'
import { picksOf } from '../../job/picks/picks-of.ts'
import { withPicks } from '../../job/picks/with-picks.ts'
import { symmetric2 } from '../../linear-algebra/symmetric2.ts'
import type { Source } from '../../uncertainty/source.ts'
import { type Feature, featureOf } from './feature-of-mark.ts'
import type { PeopleScatter } from './people.ts'

/** How the picks of a mark that was picked again scatter, and what that does to how sure it is. Pixels. */
export interface RepeatScatter {
  /** Picks, the first one counted. */
  n: number
  /**
   * What the figures are of: `point`, each coordinate; `across`, across the stroke; `line`, across the line in its
   * middle; `radius`; `corner`, each coordinate of each.
   */
  of: 'point' | 'across' | 'line' | 'radius' | 'corner'
  /** Experimental standard deviation: of one pick by hand, or of one search on a stroke; 0 where they agree. */
  s: number
  /** Degrees of freedom of s. */
  dof: number
  /** Standard uncertainty by the first pick alone, and by all. */
  alone: number
  together: number
  /** How people differ, where several picked it. */
  people?: PeopleScatter
}

/**
 * Null for a mark that was not picked again.
 * @throws GeometryError when its picks do not determine it
 * Source: JCGM 100:2008, 4.2.2 and 4.2.3.
 */
export function repeatScatter(mark: Mark): RepeatScatter | null {
  const picks = picksOf(mark)
  const n = picks.length
  if (n === 1) return null
  const all = featureOf(mark)
  const first = featureOf(withPicks(mark, picks.slice(0, 1)))
  const measured = wayOf(mark)
  const alone = measured.of(first)
  const together = measured.of(all)
  const { people } = all
  if (mark.how === 'stroke' && mark.kind !== 'path') {
    if (people !== undefined)
      return { n, of: measured.name, s: people.s, dof: n - 1, alone, together, people }
    const s = Math.sqrt(Math.max(0, n * (together ** 2 - alone ** 2)))
    return { n, of: measured.name, s, dof: n - 1, alone, together }
  }
  const { squares, dof } = all.scatter ?? { squares: 0, dof: 0 }
  const s = dof === 0 ? 0 : Math.sqrt(squares / dof)
  return { n, of: measured.name, s, dof, alone, together, ...(people && { people }) }
}

interface Way {
  name: RepeatScatter['of']
  of(feature: Feature): number
}

function wayOf(mark: Mark): Way {
  switch (mark.kind) {
    case 'point': {
      if (mark.how === 'hand') return { name: 'point', of: (feature) => along(feature, [1, 0]) }
      const { covariance, sigma } = mark
      const across = symmetric2(covariance ?? [sigma ** 2, 0, sigma ** 2])[1].vector
      return { name: 'across', of: (feature) => along(feature, across) }
    }
    case 'line':
      return { name: 'line', of: acrossMiddle }
    case 'circle':
      return { name: 'radius', of: ofRadius }
    case 'path':
      return { name: 'corner', of: (feature) => along(feature, [1, 0]) }
  }
}

/** Root of the sum over sources of what each moves, where its moves add up. */
function rootSum(feature: Feature, by: (move: Feature['picking'][number]) => number): number {
  const sums = new Map<Source, number>()
  for (const move of feature.picking) sums.set(move.source, (sums.get(move.source) ?? 0) + by(move))
  return Math.sqrt([...sums.values()].reduce((sum, part) => sum + part * part, 0))
}

/** Of the first point along a unit vector. */
const along = (feature: Feature, [x, y]: readonly [number, number]): number =>
  rootSum(feature, ({ point, dx, dy }) => (point === 0 ? dx * x + dy * y : 0))

function acrossMiddle(feature: Feature): number {
  const [[ax, ay] = [0, 0], [bx, by] = [0, 0]] = feature.points
  const long = Math.hypot(bx - ax, by - ay) || 1
  const [nx, ny] = [-(by - ay) / long, (bx - ax) / long]
  return rootSum(feature, ({ dx, dy }) => (dx * nx + dy * ny) / 2)
}

function ofRadius(feature: Feature): number {
  const radius = fitCircle(feature.points).sensitivity[2]
  return rootSum(
    feature,
    ({ point, dx, dy }) => (radius[2 * point] ?? 0) * dx + (radius[2 * point + 1] ?? 0) * dy,
  )
}
