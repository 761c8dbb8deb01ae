import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between, inkOf, type Look } from './look.ts'
import type { Layer } from './picture.ts'
import { acrossOf, arrowhead, bar, type Shape, softStain, spot, without } from './shapes.ts'

/** A way that a stroke takes: places and directions by the distance along it, pixels. */
export interface Way {
  length: number
  place: (along: number) => Pixel
  direction: (along: number) => number
}

export interface Hidden {
  strokes: Shape[]
  stains: Layer[]
  /** The share of the length that is hidden. */
  share: number
}

const KINDS = ['crossing', 'arrowhead', 'hard stain', 'soft stain', 'break'] as const

/**
 * Hides a share of a stroke by crossing lines, filled arrowheads lying on it, stains and breaks.
 * @param free stretches, from … to along it, that stay as they are
 */
export function hide(
  stroke: Shape,
  way: Way,
  look: Look,
  share: number,
  random: RandomStream,
  free: readonly (readonly [number, number])[] = [],
): Hidden {
  let main = stroke
  const over: Shape[] = []
  const stains: Layer[] = []
  const taken = free.map(([a, b]): [number, number] => [a, b])
  let hidden = 0
  for (let tries = 0; tries < 200 && hidden < share * way.length - 1; tries++) {
    const kind = KINDS[Math.floor(random.uniform() * KINDS.length)] ?? 'break'
    const left = share * way.length - hidden
    const tilt = between(random, Math.PI / 5, Math.PI / 2) * (random.uniform() < 0.5 ? -1 : 1)
    const crossing = between(random, 2, 4)
    const crossed = (crossing + look.width * Math.cos(tilt)) / Math.sin(Math.abs(tilt))
    const size = kind === 'crossing' ? crossed : Math.min(left, between(random, 4, 10))
    if (size > left + 3) continue
    const at = between(random, size / 2, way.length - size / 2)
    const [from, to] = [at - size / 2, at + size / 2]
    if (taken.some(([a, b]) => from < b + 1 && to > a - 1)) continue
    taken.push([from, to])
    hidden += size
    const place = way.place(at)
    const direction = way.direction(at)
    const n = acrossOf(direction)
    const side = random.uniform() < 0.5 ? 1 : -1
    const aside = side * (look.width / 2 + 1)
    const beside: Pixel = pixel(place[0] + aside * n[0], place[1] + aside * n[1])
    if (kind === 'crossing') over.push(bar(place, direction + tilt, crossing))
    else if (kind === 'arrowhead') over.push(arrowhead(way.place(to), direction, size, look.width / 2 + 2))
    else if (kind === 'hard stain') over.push(spot(beside, size / 2))
    else if (kind === 'soft stain') {
      stains.push({ shape: softStain(beside, size / 2.5), adds: inkOf(look) * between(random, 0.2, 0.5) })
    } else main = without(main, bar(place, direction, 4 * look.width, [-size / 2, size / 2]))
  }
  return { strokes: [main, ...over], stains, share: hidden / way.length }
}
