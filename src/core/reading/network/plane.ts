import type { Kernel } from './kernel.ts'

/** Channels over a field of places, row by row, the channels of a place together, with a margin of zeros all round. */
export interface Plane {
  readonly at: number
  readonly height: number
  readonly width: number
  readonly channels: number
  readonly marginY: number
  readonly marginX: number
}

/** A plane of zeros. */
export function takePlane(
  kernel: Kernel,
  [height, width, channels]: readonly [number, number, number],
  [marginY, marginX]: readonly [number, number],
): Plane {
  const at = kernel.take((height + 2 * marginY) * (width + 2 * marginX) * channels)
  return { at, height, width, channels, marginY, marginX }
}

/** Address of a place, which may lie in the margin. */
export function addressOf(plane: Plane, y: number, x: number): number {
  const { at, width, channels, marginY, marginX } = plane
  return at + ((y + marginY) * (width + 2 * marginX) + marginX + x) * channels * 4
}
