import { pixel } from '../../../../src/core/geometry/frames.ts'
import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import type { Picture } from '../simulate/picture.ts'
import { acrossOf, type EdgeOutcomes, noOutcomes, readEdges, SIZE } from './edges-of-stroke.ts'
import { type Finish, scanned } from './scanned.ts'

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
): Promise<EdgeOutcomes> {
  const out = noOutcomes()
  await many(cases, seed, async (random) => {
    const direction = between(random, -Math.PI / 2, Math.PI / 2)
    const width = between(random, ...widths)
    const radius = between(random, ...radii)
    const stroke = { direction, width, aside: between(random, -3, 3) }
    const data = new Float64Array(SIZE * SIZE).map((_, i) => {
      let sum = 0
      for (let k = 0; k < FINE ** 2; k++) {
        const x = (i % SIZE) + ((k % FINE) + 0.5) / FINE
        const y = Math.floor(i / SIZE) + (Math.floor(k / FINE) + 0.5) / FINE
        const u = acrossOf(stroke, pixel(x, y))
        sum += ofDisc((u + width / 2) / radius) - ofDisc((u - width / 2) / radius)
      }
      return sum / FINE ** 2
    })
    const ink: Picture = { width: SIZE, height: SIZE, data }
    readEdges(await scanned(ink, finish, false, random), stroke, random, out)
  })
  return out
}
