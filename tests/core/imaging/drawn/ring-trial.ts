import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findCircle, type StrokeCircle } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

/** Beyond the outer circle, pixels. */
const ROOM = 75
/** A pick is so far off the middle of its stroke at most, pixels. */
const OFF = 4

/** What was found of one of two round strokes about one centre. */
export interface RingOutcome {
  /** Index of the drawing; whether the inner one was picked; paper between the two, pixels. */
  drawing: number
  isInner: boolean
  gap: number
  /** Width of the stroke that was picked. */
  width: number
  radius: number
  /** Farthest from the stroke's middle all round, pixels; null when nothing was found. */
  off: number | null
  /** That in standard uncertainties, as stated for that place. */
  z: number | null
}

/**
 * Two round strokes about one centre, 8 to 60 px of paper between them: a bore in a hub, a bolt circle in the rim of a
 * flange. Each is picked at three places all round, near to it as a hand is.
 * @param searches of each drawing
 */
export async function ringTrial(
  finish: Finish,
  blueprint: boolean,
  drawings: number,
  searches: number,
  seed: number,
): Promise<RingOutcome[]> {
  const all = await many(drawings, seed, async (random, drawing) => {
    const widths = [between(random, 1.5, 6), between(random, 1.5, 6)] as const
    const gap = between(random, 8, random.uniform() < 0.5 ? 16 : 60)
    const inner = between(random, 12, 60)
    const radii = [inner, inner + gap + (widths[0] + widths[1]) / 2] as const
    const size = Math.ceil(2 * (radii[1] + ROOM))
    const middle: Pixel = pixel(size / 2 + between(random, -1, 1), size / 2 + between(random, -1, 1))
    const ring = (i: 0 | 1): string =>
      `<circle cx="${middle[0]}" cy="${middle[1]}" r="${radii[i]}" fill="none" stroke="black" stroke-width="${widths[i]}"/>`
    const drawn = await inkOfSvg(ring(0) + ring(1), size, size, between(random, 0.4, 1))
    const window = await scanned(drawn, finish, blueprint, random)
    return Array.from({ length: searches }, (_, k): RingOutcome => {
      const isInner = k % 2 === 0
      const [radius, width] = isInner ? [radii[0], widths[0]] : [radii[1], widths[1]]
      const start = between(random, 0, 2 * Math.PI)
      const pick = (share: number): Pixel => {
        const away = radius + between(random, -OFF, OFF)
        const angle = start + 2 * Math.PI * share + between(random, -0.4, 0.4)
        return pixel(middle[0] + away * Math.cos(angle), middle[1] + away * Math.sin(angle))
      }
      const found = findCircle(window, [pick(0), pick(1 / 3), pick(2 / 3)])
      const told = { drawing, isInner, gap, width, radius }
      return found.kind === 'none'
        ? { ...told, off: null, z: null }
        : { ...told, ...worst(found, middle, radius) }
    })
  })
  return all.flat()
}

/** Where a circle is farthest from the one that was drawn, and how sure it is told to be there. */
function worst({ centre, radius, covariance }: StrokeCircle, middle: Pixel, drawn: number) {
  const [xx, xy, xr, yy, yr, rr] = covariance
  const [dx, dy] = [centre[0] - middle[0], centre[1] - middle[1]]
  const side = radius < drawn ? -1 : 1
  const away = Math.hypot(dx, dy)
  const [nx, ny] = away > 0 ? [(side * dx) / away, (side * dy) / away] : [1, 0]
  const off = nx * dx + ny * dy + radius - drawn
  const variance = nx * nx * xx + 2 * nx * ny * xy + ny * ny * yy + 2 * (nx * xr + ny * yr) + rr
  return { off: Math.abs(off), z: Math.abs(off) / Math.sqrt(variance) }
}
