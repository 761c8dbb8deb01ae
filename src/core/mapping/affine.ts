import { pixel, truePoint } from '../geometry/frames.ts'
import type { Mapping } from './mapping.ts'
import { parameterAt } from './parameter.ts'
import { solveLinear } from './solve-linear.ts'

/** A symmetric stretch: any affine mapping is one after a rotation (polar decomposition). */
export const affine: Mapping = {
  kind: 'affine',
  parameters: [
    { name: 'along', role: 'scale' },
    { name: 'skew', role: 'skew' },
    { name: 'across', role: 'scale' },
  ],
  start: (scale) => [scale, 0, scale],
  apply(theta, at, { origin }) {
    const a = parameterAt(theta, 0)
    const b = parameterAt(theta, 1)
    const c = parameterAt(theta, 2)
    const u = at[0] - origin[0]
    const v = at[1] - origin[1]
    return {
      point: truePoint(a * u + b * v, b * u + c * v),
      byPixel: [a, b, b, c],
      byParameter: [u, 0, v, u, 0, v],
    }
  },
  invert(theta, [x, y], { origin }) {
    const b = parameterAt(theta, 1)
    const [u, v] = solveLinear([parameterAt(theta, 0), b, b, parameterAt(theta, 2)], x, y)
    return pixel(origin[0] + u, origin[1] + v)
  },
}
