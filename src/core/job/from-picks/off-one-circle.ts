import { algebraicCircle } from '../../geometry/algebraic-circle.ts'
import type { Pixel } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import { firstPlaces } from '../picks/picks-of.ts'
import type { UnnamedMark } from './picked-mark.ts'

/** How far holes are from lying on one circle. */
export interface OffOneCircle {
  /** Which of them is off the circle of all others, from 0; null where it can't be told which. */
  hole: number | null
  /** How far that one is off the circle of the others; else the most that one is off the circle of all. Pixels. */
  by: number
}

/** Of the radius of a hole: nobody draws it further off, so that something else was picked. Common practice, no source. */
const FAR = 0.5

/** Without the odd one the others lie this much better on a circle than without any other. Common practice, no source. */
const PLAINLY = 0.5

interface Hole {
  centre: Pixel
  radius: number
}

/**
 * Whether holes do not lie on one circle by far more than they could be drawn amiss, as when one of them was picked on another
 * stroke. Each is held against the circle of all others (leave one out); three holes always lie on one.
 * @param rims the circles that were picked, in their order
 * @returns null where they do, where nothing checks it, or where one of them is no circle
 */
export function offOneCircle(rims: readonly UnnamedMark[]): OffOneCircle | null {
  const holes = rims
    .filter(({ kind }) => kind === 'circle')
    .flatMap((rim): Hole | [] => circleOf(firstPlaces(rim)) ?? [])
  if (holes.length < 4 || holes.length < rims.length) return null
  const odd = holes
    .flatMap((hole, k) => {
      const others = holes.filter((other) => other !== hole)
      // Of three others nothing tells whether they lie on one circle.
      const rest = others.length > 3 ? farthest(others, others) : null
      const one = farthest(others, [hole])
      return rest?.isFar === false && one?.isFar === true ? [{ hole: k, by: one.by, rest: rest.by }] : []
    })
    .sort((a, b) => a.rest - b.rest)
  const [first, second] = odd
  if (first !== undefined && first.rest < PLAINLY * (second?.rest ?? Number.POSITIVE_INFINITY)) {
    return { hole: first.hole, by: first.by }
  }
  const all = farthest(holes, holes)
  return first !== undefined || all?.isFar === true ? { hole: null, by: all?.by ?? 0 } : null
}

/** How far at most some holes are off the circle through others, and whether that is far; null where there is no circle. */
function farthest(through: readonly Hole[], some: readonly Hole[]): { by: number; isFar: boolean } | null {
  const circle = circleOf(through.map(({ centre }) => centre))
  if (circle === null) return null
  const off = some.map(({ centre: [x, y], radius }) => ({
    by: Math.abs(Math.hypot(x - circle.centre[0], y - circle.centre[1]) - circle.radius),
    radius,
  }))
  return { by: Math.max(...off.map(({ by }) => by)), isFar: off.some(({ by, radius }) => by > FAR * radius) }
}

function circleOf(places: readonly Pixel[]): Hole | null {
  try {
    return algebraicCircle(places)
  } catch (error) {
    if (!(error instanceof GeometryError)) throw error
    return null
  }
}
