import { type Pixel, pixel } from '../../geometry/frames.ts'
import type { Covariance, FoundStroke } from '../../imaging/index.ts'
import { symmetric2 } from '../../linear-algebra/symmetric2.ts'
import type { FoundOn } from '../model/types.ts'
import { toThousandth, type UnnamedMark } from './picked-mark.ts'

/** Most profile centres that a job keeps of one mark. */
const MOST = 64

const tidy = ([x, y]: Pixel): Pixel => pixel(toThousandth(x), toThousandth(y))
const figures = (value: number, n: number): number => Number(value.toPrecision(n))

/** So many, evenly out of more. */
function thinned<T>(list: readonly T[]): T[] {
  if (list.length <= MOST) return [...list]
  return Array.from({ length: MOST }, (_, i) => list[Math.round((i * (list.length - 1)) / (MOST - 1))] as T)
}

/**
 * A mark where its stroke was found, as a job keeps it.
 * @param rough where it was looked for
 * @param along standard uncertainty of where a hand pointed, pixels: along a stroke a point is settled no better
 */
export function markOnStroke(found: FoundStroke, rough: readonly Pixel[], along: number): UnnamedMark {
  const leftOut = thinned(found.profiles.filter(({ kept }) => !kept).map(({ centre }) => tidy(centre)))
  const stroke: FoundOn = {
    as: found.kind,
    reading: found.reading,
    rough: rough.map(tidy),
    width: figures(found.shape.width, 4),
    ...(leftOut.length === 0 ? {} : { leftOut }),
  }
  if (found.kind === 'point') {
    const [dx, dy] = [Math.cos(found.direction), Math.sin(found.direction)]
    const [a, c] = [along ** 2, found.across ** 2]
    return pointOn(stroke, found.pixel, [
      a * dx * dx + c * dy * dy,
      (a - c) * dx * dy,
      a * dy * dy + c * dx * dx,
    ])
  }
  if (found.kind === 'crossing') return pointOn(stroke, found.pixel, found.covariance)
  const kept = found.profiles.filter((profile) => profile.kept).map(({ centre }) => tidy(centre))
  const pixels = thinned(kept)
  // Fewer centres stand for the same line only when each counts for more.
  const sigma = figures(found.sigma * Math.sqrt(pixels.length / kept.length), 3)
  return { how: 'stroke', sigma, stroke, kind: found.kind === 'line' ? 'line' : 'circle', pixels }
}

/** Its sigma is that along the worse direction. */
function pointOn(stroke: FoundOn, place: Pixel, settled: Covariance): UnnamedMark {
  const covariance = settled.map((value) => figures(value, 5)) as Covariance
  const [most] = symmetric2(covariance)
  const sigma = figures(Math.sqrt(most.value), 3)
  return { how: 'stroke', sigma, stroke, kind: 'point', pixel: tidy(place), covariance }
}
