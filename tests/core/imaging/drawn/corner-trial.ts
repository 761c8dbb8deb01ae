import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findCrossing } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 150
/** Each corner is aimed at exactly and from so far off each way, pixels; but not outward from it, where extension lines cross. */
const OFF = [-3, 0, 3]
const AIMS = OFF.flatMap((dy) => OFF.map((dx) => [dx, dy] as const)).filter(([dx, dy]) => dx + dy < 6)
export const AIMS_EACH = AIMS.length

/** What came of each of the aims at one corner. */
export interface CornerOutcome {
  /** Pixels from where the strokes' middles meet; null when nothing was found. */
  away: (number | null)[]
}

/**
 * The corner of a hatched frame from which extension lines go on after a gap, in line with the middles of its strokes or with
 * its outer edges: they cross near the corner too, and are not what is meant.
 */
export function cornerTrial(finish: Finish, cases: number, seed: number): Promise<CornerOutcome[]> {
  return many(cases, seed, async (random) => {
    const width = between(random, 4, 8)
    const thin = between(random, 1.8, width / 1.8)
    const gap = between(random, 6, 12)
    const beside = random.uniform() < 0.5 ? 0 : width / 2
    const [x, y] = [SIZE / 2 + between(random, -1, 1), SIZE / 2 + between(random, -1, 1)]
    const line = (stroke: number, ax: number, ay: number, bx: number, by: number): string =>
      `<path d="M${ax} ${ay}L${bx} ${by}" stroke="black" stroke-width="${stroke}"/>`
    const hatch = [1, 2, 3].map((k) => line(thin, x - 22 * k, y, x, y - 22 * k)).join('')
    const drawing =
      `<path d="M${x} -9V${y}H-9" fill="none" stroke="black" stroke-width="${width}"/>` +
      line(thin, x + width / 2 + gap, y + beside, SIZE + 9, y + beside) +
      line(thin, x + beside, y + width / 2 + gap, x + beside, SIZE + 9) +
      hatch
    const turn = `<g transform="rotate(${between(random, -3, 3)} ${x} ${y})">${drawing}</g>`
    const ink = await inkOfSvg(turn, SIZE, SIZE, between(random, 0.4, 1))
    const window = await scanned(ink, finish, false, random)
    const aims: Pixel[] = AIMS.map(([dx, dy]) => pixel(x + dx, y + dy))
    return {
      away: aims.map((aim) => {
        const found = findCrossing(window, aim)
        return found.kind === 'none' ? null : Math.hypot(found.pixel[0] - x, found.pixel[1] - y)
      }),
    }
  })
}
