import type { Point } from '../../geometry/frames.ts'
import { GeometryError } from '../../geometry/geometry-error.ts'
import type { Measured } from '../../geometry/polygon.ts'
import { reason } from '../../words/core-words.ts'

/** Distance of two points; gradient over both. Throws GeometryError when they are one. */
export function between<P extends Point>(p: P, q: P): Measured {
  const dx = q[0] - p[0]
  const dy = q[1] - p[1]
  const value = Math.sqrt(dx * dx + dy * dy)
  if (value === 0) throw new GeometryError(reason('measure.points-coincide'))
  const ux = dx / value
  const uy = dy / value
  return { value, gradient: [-ux, -uy, ux, uy] }
}
