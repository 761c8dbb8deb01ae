import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findCircle, type Ink } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { count, type Landed, noneLanded } from './landed.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

/** Beyond the outer circle, pixels. */
const ROOM = 75
const OFF = 4

export interface RoundTrial {
  circles: Landed
  arcs: Landed
}

/** Whole circles and arcs of one of two round strokes about one centre: the ring of a flange, a pipe and its bore. */
export async function roundTrial(
  finish: Finish,
  blueprint: boolean,
  cases: number,
  seed: number,
  ink?: Ink,
): Promise<RoundTrial> {
  const trial = { circles: noneLanded(), arcs: noneLanded() }
  await many(cases, seed, async (random) => {
    const width = between(random, 1.5, 6)
    const inner = between(random, 15, 60)
    const outer = inner + between(random, 8, 40) + width
    const size = Math.ceil(2 * (outer + ROOM))
    const middle: Pixel = pixel(size / 2 + between(random, -1, 1), size / 2 + between(random, -1, 1))
    const drawing = [inner, outer]
      .map(
        (r) =>
          `<circle cx="${middle[0]}" cy="${middle[1]}" r="${r}" fill="none" stroke="black" stroke-width="${width}"/>`,
      )
      .join('')
    const drawn = await inkOfSvg(drawing, size, size, between(random, 0.4, 1))
    const window = await scanned(drawn, finish, blueprint, random)
    const [mine, other] = random.uniform() < 0.5 ? [inner, outer] : [outer, inner]
    const start = between(random, 0, 2 * Math.PI)
    const pick = (angle: number): Pixel => {
      const away = mine + between(random, -OFF, OFF)
      return pixel(middle[0] + away * Math.cos(start + angle), middle[1] + away * Math.sin(start + angle))
    }
    /** Over three places of what was found, that lie where it was picked: a short arc tells its radius badly. */
    const tell = (landed: Landed, apart: number, whole: boolean): void => {
      const found = findCircle(window, [pick(0), pick(apart), pick(2 * apart)], { ink, whole })
      if (found.kind === 'none') {
        count(landed, null)
        return
      }
      const from = [0, apart, 2 * apart].map((angle) => {
        const a = start + angle
        const x = found.centre[0] + found.radius * Math.cos(a) - middle[0]
        const y = found.centre[1] + found.radius * Math.sin(a) - middle[1]
        return Math.hypot(x, y)
      })
      const off = (radius: number) => Math.max(...from.map((r) => Math.abs(r - radius)))
      count(landed, [off(mine), off(other)])
    }
    tell(trial.circles, (2 * Math.PI) / 3, true)
    tell(trial.arcs, 0.8, false)
  })
  return trial
}
