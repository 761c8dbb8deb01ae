import type { Radians } from '../geometry/angle-units.ts'
import { type Pixel, pixel } from '../geometry/frames.ts'

/** Where a view lies on its page; it keeps the parameters of every mapping near 1 in size. */
export interface ViewFrame {
  /** Pixel that is mapped to the true origin. */
  origin: Pixel
  /** Half the extent of what is known of the view, pixels; tilts are stated for this distance. */
  extent: number
  /** Direction of the sheet's horizontal edge in pixels, from x towards y. */
  grain: Radians
}

/**
 * The frame of a view from the features its references are marked on: the middle of their extent.
 * @param grain direction of the sheet's horizontal edge in pixels, from x towards y
 */
export function viewFrame(
  features: readonly { readonly points: readonly Pixel[] }[],
  grain: Radians,
): ViewFrame {
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
    grain,
  }
}
