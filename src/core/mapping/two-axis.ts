import { pixel, truePoint } from '../geometry/frames.ts'
import type { Mapping } from './mapping.ts'
import { parameterAt } from './parameter.ts'
import { solveLinear } from './solve-linear.ts'

/** One scale along and one across the grain of the paper. */
export const twoAxis: Mapping = {
  kind: 'two-axis',
  parameters: [
    { name: 'along', role: 'scale' },
    { name: 'across', role: 'scale' },
  ],
  start: (scale) => [scale, scale],
  apply(theta, at, { origin, grain }) {
    const along = parameterAt(theta, 0)
    const across = parameterAt(theta, 1)
    const c = Math.cos(grain)
    const s = Math.sin(grain)
    const u = c * (at[0] - origin[0]) + s * (at[1] - origin[1])
    const v = c * (at[1] - origin[1]) - s * (at[0] - origin[0])
    return {
      point: truePoint(along * u, across * v),
      byPixel: [along * c, along * s, -across * s, across * c],
      byParameter: [u, 0, 0, v],
    }
  },
  invert(theta, [x, y], { origin, grain }) {
    const [u, v] = solveLinear([parameterAt(theta, 0), 0, 0, parameterAt(theta, 1)], x, y)
    const c = Math.cos(grain)
    const s = Math.sin(grain)
    return pixel(origin[0] + c * u - s * v, origin[1] + s * u + c * v)
  },
}
