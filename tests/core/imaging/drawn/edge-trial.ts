import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findLine, findPoint } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

const SIZE = 150
/** Half of the length of a line that is picked, pixels. */
const HALF = 45

/** Errors of edges over what was stated of them, outwards above 0; and how many strokes were not found. */
export interface EdgeOutcomes {
  points: number[]
  lines: number[]
  missed: number
}

/**
 * Both edges of single strokes, 1.5 to 8 px wide and blurred by what is no Gaussian of the scan's pixels. One bit is cut at a
 * level that nobody knows.
 */
export async function edgeOutcomes(finish: Finish, cases: number, seed: number): Promise<EdgeOutcomes> {
  const out: EdgeOutcomes = { points: [], lines: [], missed: 0 }
  await many(cases, seed, async (random) => {
    const level = random.uniform() < 0.2
    const direction = level ? 0 : between(random, -Math.PI / 2, Math.PI / 2)
    const [dx, dy] = [Math.cos(direction), Math.sin(direction)]
    const width = between(random, 1.5, 8)
    const aside = between(random, -3, 3)
    const at = (along: number, across: number): Pixel =>
      pixel(SIZE / 2 + along * dx - across * dy, SIZE / 2 + along * dy + across * dx)
    const acrossOf = ([x, y]: Pixel): number => (y - SIZE / 2) * dx - (x - SIZE / 2) * dy - aside
    const [from, to] = [at(-SIZE, aside), at(SIZE, aside)]
    const drawing = `<path d="M${from[0]} ${from[1]}L${to[0]} ${to[1]}" stroke="black" stroke-width="${width}"/>`
    const ink = await inkOfSvg(drawing, SIZE, SIZE, between(random, 0.4, 1))
    const window = await scanned(ink, finish, false, random)
    const pick = (along: number): Pixel => at(along, aside + between(random, -2, 2))
    const [place, start, end] = [pick(0), pick(-HALF), pick(HALF)]
    for (const reading of ['left', 'right'] as const) {
      const side = reading === 'right' ? 1 : -1
      const point = findPoint(window, place, { reading })
      if (point.kind === 'none') out.missed++
      else {
        const way = Math.cos(point.direction - direction) > 0 ? side : -side
        out.points.push((way * acrossOf(point.pixel) - width / 2) / point.across)
      }
      const line = findLine(window, start, end, { reading })
      if (line.kind === 'none') out.missed++
      else {
        const kept = line.profiles.filter((profile) => profile.kept).length
        const middle = (acrossOf(line.ends[0]) + acrossOf(line.ends[1])) / 2
        out.lines.push((side * middle - width / 2) / (line.sigma / Math.sqrt(kept)))
      }
    }
  })
  return out
}

/** The share of errors within twice what was stated, and their root mean square in units of that. */
export const told = (errors: readonly number[]): { within: number; rms: number } => ({
  within: errors.filter((z) => Math.abs(z) <= 2).length / errors.length,
  rms: Math.sqrt(errors.reduce((sum, z) => sum + z * z, 0) / errors.length),
})
