import type { Pixel } from '../../core/geometry/frames.ts'

/** So much of a circle without a place on it is none of the arc, radians: crossings and stains leave shorter gaps. */
const LEAST_OPEN = Math.PI / 6

/** Part of a circle, radians in the scan, from less to more. */
export type Arc = readonly [from: number, to: number]

/**
 * The part of its circle that an arc runs along, by the places that were found on it: all but the widest gap.
 * @returns null where that gap is so small that it is the whole circle
 */
export function arcOf(centre: Pixel, places: readonly Pixel[]): Arc | null {
  const angles = places.map(([x, y]) => Math.atan2(y - centre[1], x - centre[0])).sort((a, b) => a - b)
  const first = angles[0]
  if (first === undefined) return null
  let widest: { open: number; arc: Arc } = { open: 0, arc: [first, first] }
  angles.forEach((angle, i) => {
    const next = angles[i + 1] ?? first + 2 * Math.PI
    const open = next - angle
    if (open > widest.open) widest = { open, arc: [next, angle + 2 * Math.PI] }
  })
  return widest.open < LEAST_OPEN ? null : widest.arc
}
