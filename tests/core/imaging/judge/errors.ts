import type { Pixel } from '../../../../src/core/geometry/frames.ts'
import type { CircleCase } from '../simulate/circle-case.ts'
import type { LineCase } from '../simulate/line-case.ts'
import { acrossOf } from '../simulate/shapes.ts'

/** Mean square of the distance of a line, given by a place and a direction, from the stroke, along all of it; pixels². */
export function lineSquare(c: LineCase, place: Pixel, direction: number): number {
  const [mx, my] = [(c.ends[0][0] + c.ends[1][0]) / 2, (c.ends[0][1] + c.ends[1][1]) / 2]
  const n = acrossOf(c.direction)
  const [x, y] = [place[0] - mx, place[1] - my]
  const slope = Math.tan(direction - c.direction)
  const offset = x * n[0] + y * n[1] - slope * (x * Math.cos(c.direction) + y * Math.sin(c.direction))
  return offset ** 2 + (slope * c.length) ** 2 / 12
}

/** Mean square of the distance of a circle from the stroke, along all of it; pixels², to first order. */
export function circleSquare(
  { centre, radius, sector }: CircleCase,
  found: { centre: Pixel; radius: number },
): number {
  const [dx, dy, dr] = [found.centre[0] - centre[0], found.centre[1] - centre[1], found.radius - radius]
  const steps = 360
  let sum = 0
  for (let i = 0; i < steps; i++) {
    const a = sector[0] + ((sector[1] - sector[0]) * (i + 0.5)) / steps
    sum += (dx * Math.cos(a) + dy * Math.sin(a) + dr) ** 2
  }
  return sum / steps
}

/** Distance of a place from a line, pixels. */
export const across = (place: Pixel, on: Pixel, direction: number): number =>
  (place[1] - on[1]) * Math.cos(direction) - (place[0] - on[0]) * Math.sin(direction)
