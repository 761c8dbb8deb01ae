import { pixel } from '../geometry/frames.ts'
import type { Feature } from '../measuring/features/feature-of-mark.ts'
import type { ViewFrame } from './mapping.ts'

/**
 * The frame of a view from the features its references are marked on: the middle of their extent.
 * @param grain degrees
 */
export function viewFrame(features: readonly Feature[], grain = 0): ViewFrame {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { points } of features) {
    for (const [x, y] of points) {
      left = Math.min(left, x)
      right = Math.max(right, x)
      top = Math.min(top, y)
      bottom = Math.max(bottom, y)
    }
  }
  return {
    origin: pixel((left + right) / 2, (top + bottom) / 2),
    extent: Math.hypot(right - left, bottom - top) / 2 || 1,
    grain: (grain * Math.PI) / 180,
  }
}
