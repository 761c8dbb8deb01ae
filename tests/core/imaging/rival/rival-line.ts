import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import { type Centroid, centroids, type Expected, inkedPixels, strongest, usualWidth } from './centroids.ts'
import type { OpenCv } from './open-cv.ts'
import { type Strip, stripOf } from './strip.ts'

export interface RivalLine {
  place: Pixel
  direction: number
}

export interface RivalLines {
  /** Grey-weighted centroids of the cross sections, then cv.fitLine with Huber's weights, three times over. */
  centroids: RivalLine
  /** Otsu's threshold, then cv.fitLine with Huber's weights through the inked pixels. */
  inked: RivalLine
}

const HALF = 20

/** @param used which distances along the way may be looked at, pixels from its start */
export function rivalLine(
  cv: OpenCv,
  window: GreyWindow,
  [from, to]: readonly [Pixel, Pixel],
  dark: boolean,
  used: (along: number) => boolean = () => true,
): RivalLines {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [dx, dy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const place = (column: number, across: number): Pixel =>
    pixel(from[0] + (column + 0.5) * dx - across * dy, from[1] + (column + 0.5) * dy + across * dx)
  const strip = stripOf(cv, window, Math.floor(length), HALF, place)
  const all: Expected = (c) => (used(c + 0.5) ? 0 : undefined)
  const width = usualWidth(strip, dark, all)
  const start = strongest(strip, dark, width, all)
  let expected: Expected = (c) => (used(c + 0.5) ? start : undefined)
  let line = fitted(cv, strip, centroids(strip, dark, width + 5, expected))
  for (let pass = 0; pass < 2; pass++) {
    const [slope, at] = acrossOf(line, from, pixel(dx, dy))
    expected = (c) => (used(c + 0.5) ? at + slope * (c + 0.5) : undefined)
    line = fitted(cv, strip, centroids(strip, dark, width, expected))
  }
  return { centroids: line, inked: fitted(cv, strip, inkedPixels(strip, dark, width, expected)) }
}

/** Slope and height of a line in the strip. */
function acrossOf({ place, direction }: RivalLine, from: Pixel, [dx, dy]: Pixel): [number, number] {
  const [vx, vy] = [Math.cos(direction), Math.sin(direction)]
  const slope = (vy * dx - vx * dy) / (vx * dx + vy * dy)
  const [x, y] = [place[0] - from[0], place[1] - from[1]]
  return [slope, y * dx - x * dy - slope * (x * dx + y * dy)]
}

function fitted(cv: OpenCv, strip: Strip, at: readonly Centroid[]): RivalLine {
  const places = at.map(({ column, across }) => strip.place(column, across))
  const points = cv.matFromArray(places.length, 1, cv.CV_32FC2, places.flat())
  const out = new cv.Mat()
  cv.fitLine(points, out, cv.DIST_HUBER, 0, 0.001, 0.001)
  const [vx = 0, vy = 0, x = 0, y = 0] = out.data32F
  points.delete()
  out.delete()
  return { place: pixel(x, y), direction: Math.atan2(vy, vx) }
}

/** Where two lines meet. */
export function meeting(a: RivalLine, b: RivalLine): Pixel {
  const [ax, ay, bx, by] = [
    Math.cos(a.direction),
    Math.sin(a.direction),
    Math.cos(b.direction),
    Math.sin(b.direction),
  ]
  const s = ((b.place[0] - a.place[0]) * by - (b.place[1] - a.place[1]) * bx) / (ax * by - ay * bx)
  return pixel(a.place[0] + s * ax, a.place[1] + s * ay)
}
