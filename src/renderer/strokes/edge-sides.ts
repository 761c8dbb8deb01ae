import { type Pixel, pixel, type Vector, vectorLike } from '../../core/geometry/frames.ts'
import type { StrokeReading } from '../../core/job/model/types.ts'
import { alongScan, type Camera } from '../camera/camera.ts'
import type { StraightSide } from '../picking/how-to-pick.ts'

/** A way in pixels of the scan. */
export type Way = Vector<Pixel>

export const way = (x: number, y: number): Way => vectorLike(pixel(0, 0), x, y)

/** How a sheet is held: unit vectors in pixels of the scan that point up and to the left on the screen. */
export interface SeenFrom {
  up: Way
  left: Way
}

/** A scan as it lies. */
export const AS_IT_LIES: SeenFrom = { up: way(0, -1), left: way(-1, 0) }

export function seenFrom(camera: Camera): SeenFrom {
  const unit = { ...camera, zoom: 1 }
  return { up: alongScan(unit, 0, -1), left: alongScan(unit, -1, 0) }
}

const dot = (a: Way, b: Way): number => a[0] * b[0] + a[1] * b[1]

/** The normal to the left of a way, as the scan is seen. */
const leftOf = ([dx, dy]: Way): Way => way(dy, -dx)

/** Whether an upright stroke, whose edges are left and right of it, as it is seen. */
const isUpright = (normal: Way, from: SeenFrom): boolean =>
  Math.abs(dot(normal, from.left)) > Math.abs(dot(normal, from.up))

/** Which side of a way its upper (or, of an upright one, left-hand) edge is, or the other. */
export function sideOf(
  side: Exclude<StraightSide, 'centre'>,
  direction: Way,
  from: SeenFrom,
): Exclude<StrokeReading, 'centre'> {
  const normal = leftOf(direction)
  const first = dot(normal, isUpright(normal, from) ? from.left : from.up) > 0
  return first === (side === 'upper') ? 'left' : 'right'
}

/** What a reading of a straight stroke is called as it is seen: `upper edge`. */
export function readingWords(reading: StrokeReading, direction: Way, from: SeenFrom): string {
  if (reading === 'centre') return 'centre'
  const left = leftOf(direction)
  const normal = reading === 'left' ? left : way(-left[0], -left[1])
  if (isUpright(normal, from)) return dot(normal, from.left) > 0 ? 'left-hand edge' : 'right-hand edge'
  return dot(normal, from.up) > 0 ? 'upper edge' : 'lower edge'
}
