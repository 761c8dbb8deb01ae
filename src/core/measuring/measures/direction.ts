import { distanceBetween } from '../../geometry/distance-between.ts'
import { type True, truePoint } from '../../geometry/frames.ts'
import { pointAt, type TrueFeature } from './true-measure.ts'

/** Unit vector along a line and the length between its ends. */
export interface Direction {
  ux: number
  uy: number
  length: number
}

export function directionOf(line: TrueFeature): Direction {
  const [p, q] = [pointAt(line, 0), pointAt(line, 1)]
  const length = distanceBetween(q, p)
  return { ux: (q[0] - p[0]) / length, uy: (q[1] - p[1]) / length, length }
}

/** Derivative of a line's direction angle by its two ends: x0, y0, x1, y1. */
export const turning = ({ ux, uy, length }: Direction): number[] => [
  uy / length,
  -ux / length,
  -uy / length,
  ux / length,
]

export const middle = (line: TrueFeature): True => {
  const [p, q] = [pointAt(line, 0), pointAt(line, 1)]
  return truePoint((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
}
