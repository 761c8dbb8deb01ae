import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { pixelShare } from './pixel-share.ts'

/** What is drawn: the share of ink in the pixel with its centre at a place, after Gaussian blur. */
export type Shape = (x: number, y: number, blur: number) => number

/** Unit vector across a direction: to its right as the scan is seen. */
export const acrossOf = (direction: number): Pixel => pixel(-Math.sin(direction), Math.cos(direction))

/**
 * A straight stroke of any length: without end unless limits are given, measured along it from its place, pixels.
 */
export function bar(
  place: Pixel,
  direction: number,
  width: number,
  limits?: readonly [number, number],
): Shape {
  const n = acrossOf(direction)
  const along: Pixel = pixel(Math.cos(direction), Math.sin(direction))
  return (x, y, blur) => {
    const t = (x - place[0]) * n[0] + (y - place[1]) * n[1]
    if (Math.abs(t) > width / 2 + 1 + 6 * blur) return 0
    const share = pixelShare(t + width / 2, n, blur) + pixelShare(width / 2 - t, n, blur) - 1
    if (limits === undefined) return share
    const s = (x - place[0]) * along[0] + (y - place[1]) * along[1]
    return share * pixelShare(s - limits[0], along, blur) * pixelShare(limits[1] - s, along, blur)
  }
}

/**
 * A round stroke. Blur (variance b²) and the pixel's own square (variance 1/12) carry a curved edge inwards by half of
 * their variance over its radius: first order of the diffusion equation in polar coordinates.
 * @param sector only within these two angles (radians, x towards y), the second the greater
 */
export function ring(
  centre: Pixel,
  radius: number,
  width: number,
  sector?: readonly [number, number],
): Shape {
  const [inner, outer] = [radius - width / 2, radius + width / 2]
  return (x, y, blur) => {
    const [dx, dy] = [x - centre[0], y - centre[1]]
    const reach = width / 2 + 1 + 6 * blur
    // Most of a picture lies well off the stroke, and `hypot` is slow.
    const square = dx * dx + dy * dy
    if (square > (radius + reach + 1) ** 2 || (reach + 1 < radius && square < (radius - reach - 1) ** 2))
      return 0
    const r = Math.hypot(dx, dy)
    if (Math.abs(r - radius) > reach || r === 0) return 0
    const n: Pixel = pixel(dx / r, dy / r)
    const mean = r + (blur * blur + 1 / 12) / (2 * r)
    const share = pixelShare(mean - inner, n, blur) - pixelShare(mean - outer, n, blur)
    if (sector === undefined) return share
    const middle = (sector[0] + sector[1]) / 2
    const a = Math.atan2(dy, dx)
    const away = Math.abs(a - middle - 2 * Math.PI * Math.round((a - middle) / (2 * Math.PI)))
    return share * pixelShare(((sector[1] - sector[0]) / 2 - away) * r, [-n[1], n[0]], blur)
  }
}

/** Everything to the left of a line along a direction: a black border, or the paper beyond its edge. */
export function halfPlane(place: Pixel, direction: number): Shape {
  const n = acrossOf(direction)
  return (x, y, blur) => pixelShare(-((x - place[0]) * n[0] + (y - place[1]) * n[1]), n, blur)
}

/** A filled arrowhead with its tip at a place, pointing in a direction. */
export function arrowhead(tip: Pixel, direction: number, length: number, half: number): Shape {
  const along: Pixel = pixel(Math.cos(direction), Math.sin(direction))
  const n = acrossOf(direction)
  const slant = Math.hypot(length, half)
  const sides = [1, -1].map(
    (side): Pixel =>
      pixel(
        (-half * along[0] - side * length * n[0]) / slant,
        (-half * along[1] - side * length * n[1]) / slant,
      ),
  )
  return (x, y, blur) => {
    const [dx, dy] = [x - tip[0], y - tip[1]]
    if (Math.hypot(dx, dy) > length + half + 2 + 6 * blur) return 0
    let share = pixelShare(dx * along[0] + dy * along[1] + length, along, blur)
    for (const side of sides) share *= pixelShare(dx * side[0] + dy * side[1], side, blur)
    return share
  }
}

/** A round spot with a hard edge. */
export function spot(centre: Pixel, radius: number): Shape {
  return (x, y, blur) => {
    const [dx, dy] = [x - centre[0], y - centre[1]]
    const r = Math.max(Math.hypot(dx, dy), 1e-6)
    return pixelShare(radius - r, [dx / r, dy / r], blur)
  }
}

/** A stain without an edge: a Gaussian hill; its height is 1. */
export function softStain(centre: Pixel, spread: number): Shape {
  return (x, y) => Math.exp(-((x - centre[0]) ** 2 + (y - centre[1]) ** 2) / (2 * spread * spread))
}

/** A stroke with a part left out. */
export function without(shape: Shape, gap: Shape): Shape {
  return (x, y, blur) => {
    const share = shape(x, y, blur)
    return share === 0 ? 0 : share * (1 - gap(x, y, blur))
  }
}
