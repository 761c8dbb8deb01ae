import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { hide } from './hide.ts'
import { between, type Look } from './look.ts'
import type { Scene } from './picture.ts'
import { cleanScene, type Scan, scanOf } from './scan-of.ts'
import { acrossOf, bar } from './shapes.ts'

const MARGIN = 34

export interface LineCase extends Scan {
  look: Look
  ends: [Pixel, Pixel]
  direction: number
  length: number
  rough: [Pixel, Pixel]
  /** The scene without noise of the stroke alone, moved across its middle (pixels) and turned about it. */
  picture: (across: number, turn: number) => Scene
}

/** A stroke that ends a little beyond its rough picks. */
export async function lineCase(
  look: Look,
  random: RandomStream,
  hidden = 0,
  lengths: readonly [number, number] = [60, 200],
): Promise<LineCase> {
  const length = between(random, ...lengths)
  const direction = between(random, -Math.PI, Math.PI)
  const [dx, dy] = [Math.cos(direction), Math.sin(direction)]
  const size = {
    width: Math.ceil(Math.abs(dx) * length + 2 * MARGIN),
    height: Math.ceil(Math.abs(dy) * length + 2 * MARGIN),
  }
  const middle: Pixel = pixel(
    size.width / 2 + between(random, -1, 1),
    size.height / 2 + between(random, -1, 1),
  )
  const n = acrossOf(direction)
  const at = (s: number, t = 0): Pixel => pixel(middle[0] + s * dx + t * n[0], middle[1] + s * dy + t * n[1])
  const half = length / 2
  const limits = [-half - between(random, 0, 6), half + between(random, 0, 6)] as const
  const stroke = bar(middle, direction, look.width, limits)
  const way = { length, place: (s: number) => at(s - half), direction: () => direction }
  const drawing = hidden > 0 ? hide(stroke, way, look, hidden, random) : { strokes: [stroke], stains: [] }
  const picture: LineCase['picture'] = (across, turn) =>
    cleanScene({ ...size, strokes: [bar(at(0, across), direction + turn, look.width, limits)] }, look)
  return {
    ...(await scanOf({ ...size, ...drawing }, look, random)),
    look,
    ends: [at(-half), at(half)],
    direction,
    length,
    rough: [at(-half, between(random, -2.5, 2.5)), at(half, between(random, -2.5, 2.5))],
    picture,
  }
}
