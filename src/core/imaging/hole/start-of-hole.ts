import type { SearchContext } from '../detect/detector.ts'
import { reachAcross } from '../filter/bar-grid.ts'
import { OrientedFilter } from '../filter/oriented-filter.ts'
import { parallelRidges, type Ridge } from '../filter/ridge-score.ts'
import type { Hole } from './hole-around.ts'
import type { HoleLine } from './hole-model.ts'

/** Directions tried, over half a turn. */
const DIRECTIONS = 36
/** Of the edge of a circle, pixels: nothing is told of the paper so near to it. */
const EDGE = 0.75
/** Centre lines are no wider, pixels, and pass the middle of their hole no farther off. */
const WIDEST = 6
const ASIDE = 3
const STRONG = 5.5
/** A fit begins with no wider line, pixels. */
const FIRST_WIDTH = 3
const PIECE = 1.25
/** Nearer in direction than this two ways are one, radians. */
const APART = 0.4

/** The two strongest straight ways through a small hole, from its middle; null when there are no two. */
export function linesThrough(
  { grey, noise, ink }: SearchContext,
  { centre, radius, width }: Hole,
): [HoleLine, HoleLine] | null {
  const inside = radius - width / 2 - EDGE
  const count = Math.max(4, Math.round((2 * inside) / PIECE))
  const filter = new OrientedFilter(grey, {
    from: -inside,
    count,
    size: (2 * inside) / count,
    half: reachAcross(ASIDE, WIDEST),
    mostOf: () => ASIDE,
    widest: WIDEST,
  })
  const strengths = new Float64Array(2 * ASIDE + 1)
  const seen: { direction: number; ridge: Ridge }[] = []
  for (let i = 0; i < DIRECTIONS; i++) {
    const direction = (Math.PI * i) / DIRECTIONS
    const grid = filter.along(centre, direction)
    for (const ridge of parallelRidges({ grid, length: 2 * inside, noise, ink }, ASIDE, strengths))
      if (ridge !== null && ridge.strength > STRONG) seen.push({ direction, ridge })
  }
  const [first, ...rest] = seen.sort((a, b) => b.ridge.strength - a.ridge.strength)
  const second = rest.find(
    ({ direction }) => Math.abs(Math.sin(direction - (first?.direction ?? direction))) > Math.sin(APART),
  )
  return first && second ? [lineOf(first), lineOf(second)] : null
}

/** Told to run towards the right of the scan, or down it. */
function lineOf({ direction, ridge }: { direction: number; ridge: Ridge }): HoleLine {
  const [across = 0] = ridge.steer
  const width = Math.min(ridge.width, FIRST_WIDTH)
  return direction > Math.PI / 2
    ? { across: -across, direction: direction - Math.PI, width }
    : { across, direction, width }
}
