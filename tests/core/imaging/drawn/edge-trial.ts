import { many } from '../judge/many.ts'
import { between } from '../simulate/look.ts'
import { type EdgeOutcomes, noOutcomes, placeOn, readEdges, SIZE } from './edges-of-stroke.ts'
import { type Finish, scanned } from './scanned.ts'
import { inkOfSvg } from './svg-picture.ts'

/**
 * Both edges of single strokes, 1.5 to 8 px wide and blurred by what is no Gaussian of the scan's pixels. One bit is cut at a
 * level that nobody knows.
 */
export async function edgeOutcomes(finish: Finish, cases: number, seed: number): Promise<EdgeOutcomes> {
  const out = noOutcomes()
  await many(cases, seed, async (random) => {
    const level = random.uniform() < 0.2
    const direction = level ? 0 : between(random, -Math.PI / 2, Math.PI / 2)
    const width = between(random, 1.5, 8)
    const stroke = { direction, width, aside: between(random, -3, 3) }
    const [from, to] = [placeOn(stroke, -SIZE, stroke.aside), placeOn(stroke, SIZE, stroke.aside)]
    const drawing = `<path d="M${from[0]} ${from[1]}L${to[0]} ${to[1]}" stroke="black" stroke-width="${width}"/>`
    const ink = await inkOfSvg(drawing, SIZE, SIZE, between(random, 0.4, 1))
    readEdges(await scanned(ink, finish, false, random), stroke, random, out)
  })
  return out
}

/** The share of errors within twice what was stated, and their root mean square in units of that. */
export const told = (errors: readonly number[]): { within: number; rms: number } => ({
  within: errors.filter((z) => Math.abs(z) <= 2).length / errors.length,
  rms: Math.sqrt(errors.reduce((sum, z) => sum + z * z, 0) / errors.length),
})
