import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findCrossing, type Ink } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { count, type Landed, noneLanded } from './landed.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 200
const OFF = 3

/** Where two strokes cross of which each has a neighbour: two walls that meet two others. */
export async function gridTrial(
  finish: Finish,
  blueprint: boolean,
  cases: number,
  seed: number,
  ink?: Ink,
): Promise<Landed> {
  const landed = noneLanded()
  await many(cases, seed, async (random) => {
    const first = between(random, 0, Math.PI)
    const angle = between(random, 0.7, Math.PI - 0.7)
    const widths = [between(random, 1.5, 6), between(random, 1.5, 6)] as const
    const asides = widths.map((width) => [0, between(random, 8, 60) + width] as const)
    const ways = [first, first + angle] as const
    const drawing = ways.flatMap((way, i) =>
      (asides[i] ?? []).map((aside) => {
        const [dx, dy] = [Math.cos(way), Math.sin(way)]
        const [x, y] = [SIZE / 2 - aside * dy, SIZE / 2 + aside * dx]
        const [ex, ey] = [2 * SIZE * dx, 2 * SIZE * dy]
        return `<path d="M${x - ex} ${y - ey}L${x + ex} ${y + ey}" stroke="black" stroke-width="${widths[i] ?? 1}"/>`
      }),
    )
    const drawn = await inkOfSvg(drawing.join(''), SIZE, SIZE, between(random, 0.4, 1))
    const window = await scanned(drawn, finish, blueprint, random)
    const rough = pixel(SIZE / 2 + between(random, -OFF, OFF), SIZE / 2 + between(random, -OFF, OFF))
    const found = findCrossing(window, rough, { ink })
    if (found.kind === 'none') {
      count(landed, null)
      return
    }
    /** Where strokes so far aside of the two through the middle cross. */
    const meeting = (a: number, b: number): Pixel => {
      const along = (a * Math.cos(angle) - b) / Math.sin(angle)
      return pixel(
        SIZE / 2 + along * Math.cos(first) - a * Math.sin(first),
        SIZE / 2 + along * Math.sin(first) + a * Math.cos(first),
      )
    }
    const all = (asides[0] ?? []).flatMap((a) => (asides[1] ?? []).map((b) => meeting(a, b)))
    const off = all.map(([x, y]) => Math.hypot(found.pixel[0] - x, found.pixel[1] - y))
    count(landed, off as [number, ...number[]])
  })
  return landed
}
