import { findCrossing } from '../../../../src/core/imaging/index.ts'
import { boundFor } from '../cramer-rao.ts'
import type { CrossingCase } from '../simulate/crossing-case.ts'
import { acrossOf } from '../simulate/shapes.ts'
import type { Outcome } from './score.ts'
import { nearKept } from './used-length.ts'

/**
 * A crossing against the truth: half of the squared distance, so that it compares with an error across one stroke. The
 * bound is that of the kept pieces of the arms: what lies nearest to the crossing itself is left out on purpose.
 */
export function judgeCrossing(c: CrossingCase): Outcome | null {
  const found = findCrossing(c.window, c.rough)
  if (found.kind === 'none') return null
  const [ex, ey] = [found.pixel[0] - c.place[0], found.pixel[1] - c.place[1]]
  const reach = Math.max(
    ...found.profiles.map(({ centre: [x, y] }) => Math.hypot(x - c.place[0], y - c.place[1])),
  )
  const rests = nearKept(found.profiles)
  const covariance = boundFor(c.look, c, {
    picture: ([a = 0, b = 0, d = 0, e = 0]) => c.picture(a, b, d, e),
    at: [0, 0, 0, 0],
    steps: [0.02, 0.0005, 0.02, 0.0005],
    used: (x, y) => rests(x, y) && Math.hypot(x - c.place[0], y - c.place[1]) <= reach,
  })
  // The crossing moves so that each stroke's own move is what it moves across that stroke.
  const [n, m] = [acrossOf(c.directions[0]), acrossOf(c.directions[1])]
  const determinant = n[0] * m[1] - n[1] * m[0]
  const [p, q, r] = [covariance.get(0, 0), covariance.get(0, 2), covariance.get(2, 2)]
  const bound = (p - 2 * q * (n[0] * m[0] + n[1] * m[1]) + r) / determinant ** 2
  const [xx, xy, yy] = found.covariance
  return {
    square: (ex * ex + ey * ey) / 2,
    bound: bound / 2,
    chiSquare: (yy * ex * ex - 2 * xy * ex * ey + xx * ey * ey) / (xx * yy - xy * xy),
    dof: 2,
  }
}
