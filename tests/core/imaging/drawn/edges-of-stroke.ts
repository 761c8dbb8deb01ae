import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findLine, findPoint, type GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between } from '../simulate/look.ts'

/** Pixels each way of a picture with one stroke. */
export const SIZE = 150
/** Half of the length of a line that is picked, pixels. */
const HALF = 45

/** Errors of edges over what was stated of them, outwards above 0; and how many strokes were not found. */
export interface EdgeOutcomes {
  points: number[]
  lines: number[]
  /** Those of lines in pixels. */
  off: number[]
  missed: number
}

/** A straight stroke through about the middle of a picture: how it leans, rad, how far it lies aside, and its width, pixels. */
export interface Stroke {
  direction: number
  aside: number
  width: number
}

/** A place by how far it lies along a stroke's direction and across it, from the middle of the picture. */
export const placeOn = ({ direction }: Stroke, along: number, across: number): Pixel => {
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)]
  return pixel(SIZE / 2 + along * dx - across * dy, SIZE / 2 + along * dy + across * dx)
}

/** How far a place lies from the middle of a stroke, across it. */
export const acrossOf = ({ direction, aside }: Stroke, [x, y]: Pixel): number =>
  (y - SIZE / 2) * Math.cos(direction) - (x - SIZE / 2) * Math.sin(direction) - aside

/** Reads both edges of a stroke at a point and along a line, picked up to 2 px off, into the outcomes. */
export function readEdges(window: GreyWindow, stroke: Stroke, random: RandomStream, out: EdgeOutcomes): void {
  const { direction, width, aside } = stroke
  const pick = (along: number): Pixel => placeOn(stroke, along, aside + between(random, -2, 2))
  const [place, start, end] = [pick(0), pick(-HALF), pick(HALF)]
  for (const reading of ['left', 'right'] as const) {
    const side = reading === 'right' ? 1 : -1
    const point = findPoint(window, place, { reading })
    if (point.kind === 'none') out.missed++
    else {
      const way = Math.cos(point.direction - direction) > 0 ? side : -side
      out.points.push((way * acrossOf(stroke, point.pixel) - width / 2) / point.across)
    }
    const line = findLine(window, start, end, { reading })
    if (line.kind === 'none') out.missed++
    else {
      const kept = line.profiles.filter((profile) => profile.kept).length
      const middle = (acrossOf(stroke, line.ends[0]) + acrossOf(stroke, line.ends[1])) / 2
      const off = side * middle - width / 2
      out.off.push(off)
      out.lines.push(off / (line.sigma / Math.sqrt(kept)))
    }
  }
}

export const noOutcomes = (): EdgeOutcomes => ({ points: [], lines: [], off: [], missed: 0 })
