import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findCrossing } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 160
const OFF = 3

/** What came of the crossing of a hole's centre lines. */
export interface HoleOutcome {
  radius: number
  /** Pixels from where the lines cross, and that in units of what was stated; null when nothing was found. */
  away: number | null
  z: number | null
  /** Code of why nothing was found. */
  why?: string
}

/** Small holes drawn as circles, with centre lines that cross in the middle and end a little beyond the circle. */
export function holeTrial(
  finish: Finish,
  cases: number,
  seed: number,
  radii: readonly [number, number] = [8, 30],
): Promise<HoleOutcome[]> {
  return many(cases, seed, async (random) => {
    const radius = between(random, ...radii)
    const width = between(random, 1.8, 4)
    const thin = between(random, 1.5, width)
    const middle: Pixel = pixel(SIZE / 2 + between(random, -1, 1), SIZE / 2 + between(random, -1, 1))
    const turn = random.uniform() < 0.5 ? 0 : between(random, 0, Math.PI / 2)
    const beyond = radius + between(random, 3, 8)
    const line = (way: number): string => {
      const [dx, dy] = [beyond * Math.cos(way), beyond * Math.sin(way)]
      return `<path d="M${middle[0] - dx} ${middle[1] - dy}L${middle[0] + dx} ${middle[1] + dy}" stroke="black" stroke-width="${thin}"/>`
    }
    const drawing =
      `<circle cx="${middle[0]}" cy="${middle[1]}" r="${radius}" fill="none" stroke="black" stroke-width="${width}"/>` +
      line(turn) +
      line(turn + Math.PI / 2)
    const window = await scanned(
      await inkOfSvg(drawing, SIZE, SIZE, between(random, 0.4, 1)),
      finish,
      false,
      random,
    )
    const rough = pixel(middle[0] + between(random, -OFF, OFF), middle[1] + between(random, -OFF, OFF))
    const found = findCrossing(window, rough)
    if (found.kind === 'none') return { radius, away: null, z: null, why: found.because.code }
    const [x, y] = [found.pixel[0] - middle[0], found.pixel[1] - middle[1]]
    const [xx, xy, yy] = found.covariance
    const z = Math.sqrt((x * x * yy - 2 * x * y * xy + y * y * xx) / (xx * yy - xy * xy) / 2)
    return { radius, away: Math.hypot(x, y), z }
  })
}
