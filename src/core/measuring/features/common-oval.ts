import type { CircleFit } from '../../geometry/fit-circle.ts'
import { type Pixel, pixel } from '../../geometry/frames.ts'
import { dot } from '../../linear-algebra/dot.ts'
import { aboutCircle, besideCircle, OVAL } from './round-scatter.ts'

/** As much must be left of an oval to tell it from a circle that lies elsewhere: of three places round it there is not. */
const TELLS_AN_OVAL = 0.1

/** Points of several people, freed of the oval that all of them show. */
export interface Freed {
  people: Pixel[][]
  /** How many numbers of the oval were worked out of the points for that: 0 where they do not tell it. */
  numbers: 0 | 2
}

/**
 * Frees what several people picked of one circle of the oval that a sheet which shrank more one way shows to all of them,
 * as each person's points tell it about their own circle.
 * @param circles that of each person
 * Method: what goes twice round with the angle, beside each person's own circle, by least squares, to first order.
 */
export function freedOfOval(
  people: readonly (readonly Pixel[])[],
  circles: readonly CircleFit<Pixel>[],
): Freed {
  const about = people.map((points, j) => aboutCircle(points, circles[j] as CircleFit<Pixel>))
  const residuals = about.flatMap((own) => own.residuals)
  const [a = [], b = []] = OVAL.map((shape) => about.flatMap(({ angles }) => besideCircle(angles, shape)))
  const [aa, ab, bb] = [dot(a, a), dot(a, b), dot(b, b)]
  const determinant = aa * bb - ab * ab
  if (!(determinant > (TELLS_AN_OVAL * residuals.length) ** 2)) {
    return { people: people.map((points) => [...points]), numbers: 0 }
  }
  const [ar, br] = [dot(a, residuals), dot(b, residuals)]
  const size = [(ar * bb - br * ab) / determinant, (br * aa - ar * ab) / determinant]
  const freed = people.map((points, j) =>
    points.map(([x, y], i) => {
      const angle = about[j]?.angles[i] ?? 0
      const by = OVAL.reduce((sum, shape, k) => sum + (size[k] ?? 0) * shape(angle), 0)
      return pixel(x - by * Math.cos(angle), y - by * Math.sin(angle))
    }),
  )
  return { people: freed, numbers: 2 }
}
