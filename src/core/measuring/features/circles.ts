import type { CircleFit } from '../../geometry/fit-circle.ts'
import { type Pixel, pixel, type Vector, vectorLike } from '../../geometry/frames.ts'
import type { Feature, Move } from './feature.ts'
import type { Deviation } from './repeated-picks.ts'

/** What a circle's picks make of it. */
export interface OwnCircle extends Pick<Feature, 'scatter' | 'people'> {
  points: readonly Pixel[]
  picking: Move[]
}

/** A circle as numbers: its centre's coordinates and its radius. */
export const vectorOf = ({ centre, radius }: Pick<CircleFit<Pixel>, 'centre' | 'radius'>): number[] => [
  centre[0],
  centre[1],
  radius,
]

/** Unit vectors from a centre to points. */
export function outwardOf(points: readonly Pixel[], [cx, cy]: Pixel): Vector<Pixel>[] {
  return points.map((at) => {
    const [dx, dy] = [at[0] - cx, at[1] - cy]
    const far = Math.hypot(dx, dy) || 1
    return vectorLike(at, dx / far, dy / far)
  })
}

/** How a point of a circle moves when the circle does. */
function moved(outward: Vector<Pixel> | undefined, [x = 0, y = 0, r = 0]: readonly number[]) {
  return [x + r * (outward?.[0] ?? 0), y + r * (outward?.[1] ?? 0)] as const
}

/** Points of a circle where they come to lie when its centre and radius change by so much. */
export const shiftedBy = (
  points: readonly Pixel[],
  outward: readonly Vector<Pixel>[],
  by: readonly number[],
): Pixel[] =>
  points.map(([x, y], i) => {
    const [dx, dy] = moved(outward[i], by)
    return pixel(x + dx, y + dy)
  })

/** Changes of a circle as moves of its points. */
export const shiftMoves = (deviations: readonly Deviation[], outward: readonly Vector<Pixel>[]): Move[] =>
  deviations.flatMap(({ source, by }) =>
    outward.map((way, point): Move => {
      const [dx, dy] = moved(way, by)
      return { source, point, dx, dy }
    }),
  )
