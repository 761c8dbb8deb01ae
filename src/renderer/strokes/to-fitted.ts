import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import { symmetric2 } from '../../core/geometry/symmetric2.ts'
import type { Covariance } from '../../core/imaging/index.ts'
import type { StrokeReading } from '../../core/job/model/types.ts'
import type { Fitted } from '../picking/fitted.ts'
import type { FoundStroke } from './search.ts'

/** Most profile centres that a job keeps of one mark. */
const MOST = 64

/** A thousandth of a pixel is far below what can be found, and keeps the job readable. */
const tidy = ([x, y]: Pixel): Pixel => pixel(Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000)
const figures = (value: number, n: number): number => Number(value.toPrecision(n))

/** So many, evenly out of more. */
function thinned<T>(list: readonly T[]): T[] {
  if (list.length <= MOST) return [...list]
  return Array.from({ length: MOST }, (_, i) => list[Math.round((i * (list.length - 1)) / (MOST - 1))] as T)
}

/**
 * What was found, as a job keeps it.
 * @param rough where it was looked for
 * @param along standard uncertainty of where a hand pointed, pixels: along a stroke a point is settled no better
 */
export function toFitted(
  found: FoundStroke,
  reading: StrokeReading,
  rough: readonly Pixel[],
  along: number,
): Fitted {
  const leftOut = thinned(found.profiles.filter(({ kept }) => !kept).map(({ centre }) => tidy(centre)))
  const stroke = {
    as: found.kind,
    reading,
    rough: rough.map(tidy),
    width: figures(found.shape.width, 4),
    ...(leftOut.length === 0 ? {} : { leftOut }),
  }
  if (found.kind === 'point') {
    const [dx, dy] = [Math.cos(found.direction), Math.sin(found.direction)]
    const [a, c] = [along ** 2, found.across ** 2]
    return ofPoint(stroke, found.pixel, [
      a * dx * dx + c * dy * dy,
      (a - c) * dx * dy,
      a * dy * dy + c * dx * dx,
    ])
  }
  if (found.kind === 'crossing') return ofPoint(stroke, found.pixel, found.covariance)
  const kept = found.profiles.filter((profile) => profile.kept).map(({ centre }) => tidy(centre))
  const pixels = thinned(kept)
  // Fewer centres stand for the same line only when each counts for more.
  const sigma = figures(found.sigma * Math.sqrt(pixels.length / kept.length), 3)
  return { stroke, pixels, sigma, across: sigma / Math.sqrt(pixels.length) }
}

function ofPoint(stroke: Fitted['stroke'], pixel: Pixel, found: Covariance): Fitted {
  const covariance = found.map((value) => figures(value, 5)) as Covariance
  const [most, least] = symmetric2(covariance)
  return {
    stroke,
    pixels: [tidy(pixel)],
    sigma: figures(Math.sqrt(most.value), 3),
    across: Math.sqrt(Math.max(least.value, 0)),
    covariance,
  }
}
