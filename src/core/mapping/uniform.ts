import { pixel, truePoint } from '../geometry/frames.ts'
import type { Mapping } from './mapping.ts'
import { parameterAt } from './parameter.ts'
import { solveLinear } from './solve-linear.ts'

/** One scale all over. */
export const uniform: Mapping = {
  kind: 'uniform',
  parameters: [{ name: 'scale', role: 'scale' }],
  start: (scale) => [scale],
  apply(theta, at, { origin }) {
    const s = parameterAt(theta, 0)
    const u = at[0] - origin[0]
    const v = at[1] - origin[1]
    return { point: truePoint(s * u, s * v), byPixel: [s, 0, 0, s], byParameter: [u, v] }
  },
  invert(theta, [x, y], { origin }) {
    const s = parameterAt(theta, 0)
    const [u, v] = solveLinear([s, 0, 0, s], x, y)
    return pixel(origin[0] + u, origin[1] + v)
  },
}
