import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import { findLine, findPoint } from '../../../../src/core/imaging/index.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import type { Picture } from '../simulate/picture.ts'
import type { EdgeOutcomes } from './edge-trial.ts'
import { type Finish, scanned } from './scanned.ts'

const SIZE = 150
/** Half of the length of a line that is picked, pixels. */
const HALF = 45
/** Each pixel is the mean of so many places each way. */
const FINE = 5

/** How much of a disc of radius 1 lies to one side of a straight edge, so far from its middle. */
const ofDisc = (u: number): number =>
  u <= -1 ? 0 : u >= 1 ? 1 : 0.5 + (u * Math.sqrt(1 - u * u) + Math.asin(u)) / Math.PI

/**
 * Both edges of single thin strokes out of focus: each point of the drawing is a disc, as of a lens at a wrong distance, and
 * each pixel the mean of what falls on it.
 * @param widths of the strokes; radii of the discs, pixels
 */
export async function defocusOutcomes(
  finish: Finish,
  cases: number,
  seed: number,
  { widths, radii }: { widths: readonly [number, number]; radii: readonly [number, number] },
): Promise<EdgeOutcomes & { off: number[] }> {
  const out = { points: [] as number[], lines: [] as number[], off: [] as number[], missed: 0 }
  await many(cases, seed, async (random) => {
    const direction = between(random, -Math.PI / 2, Math.PI / 2)
    const [dx, dy] = [Math.cos(direction), Math.sin(direction)]
    const width = between(random, ...widths)
    const radius = between(random, ...radii)
    const aside = between(random, -3, 3)
    const at = (along: number, across: number): Pixel =>
      pixel(SIZE / 2 + along * dx - across * dy, SIZE / 2 + along * dy + across * dx)
    const acrossOf = ([x, y]: Pixel): number => (y - SIZE / 2) * dx - (x - SIZE / 2) * dy - aside
    const data = new Float64Array(SIZE * SIZE).map((_, i) => {
      let sum = 0
      for (let k = 0; k < FINE ** 2; k++) {
        const x = (i % SIZE) + ((k % FINE) + 0.5) / FINE
        const y = Math.floor(i / SIZE) + (Math.floor(k / FINE) + 0.5) / FINE
        const u = acrossOf(pixel(x, y))
        sum += ofDisc((u + width / 2) / radius) - ofDisc((u - width / 2) / radius)
      }
      return sum / FINE ** 2
    })
    const ink: Picture = { width: SIZE, height: SIZE, data }
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
        out.off.push(side * middle - width / 2)
      }
    }
  })
  return out
}
