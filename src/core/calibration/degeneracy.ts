import { Matrix, SingularValueDecomposition } from 'ml-matrix'
import { type Degrees, degrees, toRadians } from '../geometry/angle-units.ts'
import { pixel } from '../geometry/frames.ts'
import { element } from '../linear-algebra/element.ts'
import type { Mapping } from '../mapping/mapping.ts'
import { parameterSize } from '../mapping/parameter.ts'
import type { ViewMapping } from '../mapping/view-mapping.ts'
import { type CoreReason, reason } from '../words/core-words.ts'

/**
 * Smallest over largest singular value of the jacobian, its columns at unit length:
 * how far the references are from leaving some parameter free. 0 when one is free.
 */
export function spreadOfDirections(mapping: Mapping, scale: number, jacobian: Matrix): number {
  const scaled = scaledJacobian(mapping, scale, jacobian)
  const lengths = mapping.parameters.map((_, k) => Math.hypot(...scaled.getColumn(k)))
  const longest = Math.max(...lengths)
  for (const [k, length] of lengths.entries()) {
    // Brought to unit length, a column of rounding errors would look like any other.
    if (!(length > 1e-9 * longest)) return 0
    scaled.mulColumn(k, 1 / length)
  }
  const singular = new SingularValueDecomposition(scaled).diagonal
  return Math.min(...singular) / Math.max(...singular)
}

/** What the references leave free and what to add. */
export function whatIsMissing(view: ViewMapping, theta: readonly number[], jacobian: Matrix): CoreReason {
  const { mapping } = view
  const scale = Math.abs(theta[0] ?? 1) || 1
  const free = leastDetermined(scaledJacobian(mapping, scale, jacobian))
  const tilt = free.reduce((s, v, k) => s + (mapping.parameters[k]?.role === 'tilt' ? v * v : 0), 0)
  const has = { mapping: mapping.kind, sizes: mapping.parameters.length }
  return tilt > 0.3
    ? reason('calibration.tilt-free', has)
    : reason('calibration.scale-free', { ...has, degrees: bestDirection(view, theta, free) })
}

function scaledJacobian(mapping: Mapping, scale: number, jacobian: Matrix): Matrix {
  const scaled = jacobian.clone()
  for (const [k, parameter] of mapping.parameters.entries()) {
    scaled.mulColumn(k, parameterSize(parameter, scale))
  }
  return scaled
}

function leastDetermined(scaled: Matrix): number[] {
  const p = scaled.columns
  // Padded to a square with zero rows, so that the directions no equation touches come out too.
  const square = Matrix.zeros(Math.max(scaled.rows, p), p)
  square.setSubMatrix(scaled, 0, 0)
  const svd = new SingularValueDecomposition(square, { autoTranspose: true })
  const last = svd.diagonal.indexOf(Math.min(...svd.diagonal))
  return svd.rightSingularVectors.getColumn(last)
}

/** Direction from the sheet's horizontal edge in which a new length would tell most of what is free. */
function bestDirection(view: ViewMapping, theta: readonly number[], free: readonly number[]): Degrees {
  const { mapping, frame } = view
  const scale = Math.abs(theta[0] ?? 1) || 1
  let best = degrees(0)
  let most = -1
  // 0 and 90 first: where several directions would do, the plain one is named.
  for (const turn of [0, 90, 45, 135, 15, 30, 60, 75, 105, 120, 150, 165]) {
    const direction = frame.grain + toRadians(degrees(turn))
    const [c, s] = [Math.cos(direction), Math.sin(direction)]
    const image = mapping.apply(theta, pixel(frame.origin[0] + c, frame.origin[1] + s), frame)
    const [x, y] = image.point
    const length = Math.hypot(x, y)
    const change = Math.abs(
      free.reduce((sum, v, k) => {
        const byX = image.byParameter[2 * k] ?? 0
        const byY = image.byParameter[2 * k + 1] ?? 0
        return sum + (v * parameterSize(element(mapping.parameters, k), scale) * (x * byX + y * byY)) / length
      }, 0),
    )
    if (change > most * 1.001) {
      best = degrees(turn)
      most = change
    }
  }
  return best
}
