import { pixel, truePoint } from '../geometry/frames.ts'
import { GeometryError } from '../geometry/geometry-error.ts'
import { reason } from '../words/core-words.ts'
import type { Mapping } from './mapping.ts'
import { parameterAt } from './parameter.ts'
import { solveLinear } from './solve-linear.ts'

/** Relative distance from the vanishing line, 1 at the origin, below which a plane is seen too flat to measure. */
const HORIZON = 0.1

/** A plane seen from anywhere: the symmetric stretch at the origin and two tilts. */
export const projective: Mapping = {
  kind: 'projective',
  parameters: [
    { name: 'along', role: 'scale' },
    { name: 'skew', role: 'skew' },
    { name: 'across', role: 'scale' },
    { name: 'tilt_x', role: 'tilt' },
    { name: 'tilt_y', role: 'tilt' },
  ],
  start: (scale) => [scale, 0, scale, 0, 0],
  apply(theta, at, { origin, extent }) {
    const a = parameterAt(theta, 0)
    const b = parameterAt(theta, 1)
    const c = parameterAt(theta, 2)
    const p = parameterAt(theta, 3) / extent
    const q = parameterAt(theta, 4) / extent
    const u = at[0] - origin[0]
    const v = at[1] - origin[1]
    const w = 1 + p * u + q * v
    if (!(w > HORIZON)) {
      throw new GeometryError(reason('mapping.mark-beyond-horizon'))
    }
    const x = (a * u + b * v) / w
    const y = (b * u + c * v) / w
    return {
      point: truePoint(x, y),
      byPixel: [(a - x * p) / w, (b - x * q) / w, (b - y * p) / w, (c - y * q) / w],
      byParameter: [
        u / w,
        0,
        v / w,
        u / w,
        0,
        v / w,
        (-x * u) / (w * extent),
        (-y * u) / (w * extent),
        (-x * v) / (w * extent),
        (-y * v) / (w * extent),
      ],
    }
  },
  // x w = a u + b v and y w = b u + c v, with w = 1 + p u + q v, are linear in u and v.
  invert(theta, [x, y], { origin, extent }) {
    const b = parameterAt(theta, 1)
    const p = parameterAt(theta, 3) / extent
    const q = parameterAt(theta, 4) / extent
    const [u, v] = solveLinear(
      [parameterAt(theta, 0) - x * p, b - x * q, b - y * p, parameterAt(theta, 2) - y * q],
      x,
      y,
    )
    if (!(1 + p * u + q * v > HORIZON)) {
      throw new GeometryError(reason('mapping.true-point-beyond-horizon'))
    }
    return pixel(origin[0] + u, origin[1] + v)
  },
}
