import type { Point } from './frames.ts'

/** How far two points of one frame lie apart, in its unit. */
export const distanceBetween = <P extends Point>(a: P, b: NoInfer<P>): number =>
  Math.hypot(b[0] - a[0], b[1] - a[1])
