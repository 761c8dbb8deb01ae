import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import { centroids, type Expected, strongest, usualWidth } from './centroids.ts'
import type { OpenCv } from './open-cv.ts'
import { stripOf } from './strip.ts'

export interface RivalCircle {
  centre: Pixel
  radius: number
}

/** Circle by linear least squares through cv.solve (the algebraic fit after Kåsa 1976). */
function solved(cv: OpenCv, places: readonly Pixel[]): RivalCircle {
  const [ox, oy] = places[0] ?? [0, 0]
  const rows = places.map(([x, y]) => [2 * (x - ox), 2 * (y - oy), 1])
  const left = cv.matFromArray(rows.length, 3, cv.CV_64FC1, rows.flat())
  const squares = places.map(([x, y]) => (x - ox) ** 2 + (y - oy) ** 2)
  const right = cv.matFromArray(rows.length, 1, cv.CV_64FC1, squares)
  const out = new cv.Mat()
  cv.solve(left, right, out, cv.DECOMP_QR)
  const [a = 0, b = 0, c = 0] = out.data64F
  for (const mat of [left, right, out]) mat.delete()
  return { centre: pixel(a + ox, b + oy), radius: Math.sqrt(c + a * a + b * b) }
}

/** cv.fitEllipse; the radius is the mean of its half axes. */
function ellipse(cv: OpenCv, places: readonly Pixel[]): RivalCircle {
  const [ox, oy] = places[0] ?? [0, 0]
  const points = cv.matFromArray(
    places.length,
    1,
    cv.CV_32FC2,
    places.flatMap(([x, y]) => [x - ox, y - oy]),
  )
  const { center, size } = cv.fitEllipse(points)
  points.delete()
  return { centre: pixel(center.x + ox, center.y + oy), radius: (size.width + size.height) / 4 }
}

/**
 * Grey-weighted centroids along the rays of the circle through the picks, twice over, then both fits, without the
 * centroids that lie more than three times the usual distance off.
 */
export function rivalCircle(
  cv: OpenCv,
  window: GreyWindow,
  picks: readonly Pixel[],
  [start, end]: readonly [number, number],
  dark: boolean,
): { solved: RivalCircle; ellipse: RivalCircle } {
  const rough = solved(cv, picks)
  const columns = Math.floor((end - start) * rough.radius)
  const half = Math.min(20, Math.floor(rough.radius) - 2)
  const angle = (c: number) => start + ((end - start) * (c + 0.5)) / columns
  const place = (c: number, across: number): Pixel =>
    pixel(
      rough.centre[0] + (rough.radius + across) * Math.cos(angle(c)),
      rough.centre[1] + (rough.radius + across) * Math.sin(angle(c)),
    )
  const strip = stripOf(cv, window, columns, half, place)
  const width = usualWidth(strip, dark, () => 0)
  const first = strongest(strip, dark, width, () => 0)
  let expected: Expected = () => first
  let places: Pixel[] = []
  for (let pass = 0; pass < 3; pass++) {
    places = centroids(strip, dark, pass === 0 ? width + 5 : width, expected).map((c) =>
      place(c.column, c.across),
    )
    const circle = solved(cv, trimmed(places, solved(cv, places)))
    expected = (c) => {
      const [x, y] = place(c, 0)
      return circle.radius - Math.hypot(x - circle.centre[0], y - circle.centre[1])
    }
    places = trimmed(places, circle)
  }
  return { solved: solved(cv, places), ellipse: ellipse(cv, places) }
}

function trimmed(places: readonly Pixel[], { centre, radius }: RivalCircle): Pixel[] {
  const off = ([x, y]: Pixel) => Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius)
  const usual = places.map(off).sort((a, b) => a - b)[places.length >> 1] ?? 0
  return places.filter((p) => off(p) <= 3 * 1.4826 * usual + 1e-9)
}
