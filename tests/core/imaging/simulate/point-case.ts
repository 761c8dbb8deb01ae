import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { hide } from './hide.ts'
import { between, type Look } from './look.ts'
import type { Scene } from './picture.ts'
import { cleanScene, type Scan, scanOf } from './scan-of.ts'
import { acrossOf, bar } from './shapes.ts'

const SIZE = 88

/** A straight stroke through a window, and where it is pointed at. */
export interface PointCase extends Scan {
  look: Look
  place: Pixel
  direction: number
  rough: Pixel
  /** The scene without noise of the stroke alone, moved across (pixels) and turned about its place, and as wide as this. */
  picture: (across: number, turn: number, width?: number, contrast?: number, blur?: number) => Scene
}

export async function pointCase(look: Look, random: RandomStream, hidden = 0): Promise<PointCase> {
  const direction = between(random, -Math.PI / 2, Math.PI / 2)
  const place: Pixel = pixel(
    between(random, SIZE / 2 - 3, SIZE / 2 + 3),
    between(random, SIZE / 2 - 3, SIZE / 2 + 3),
  )
  const n = acrossOf(direction)
  const [aside, ahead] = [between(random, -3, 3), between(random, -3, 3)]
  const at = (s: number): Pixel =>
    pixel(place[0] + s * Math.cos(direction), place[1] + s * Math.sin(direction))
  const foot = at(ahead)
  const rough: Pixel = pixel(foot[0] + aside * n[0], foot[1] + aside * n[1])
  const stroke = bar(place, direction, look.width)
  const size = { width: SIZE, height: SIZE }
  const way = { length: 40, place: (s: number) => at(s + ahead - 20), direction: () => direction }
  const drawing =
    hidden > 0 ? hide(stroke, way, look, hidden, random, [[16, 24]]) : { strokes: [stroke], stains: [] }
  const picture: PointCase['picture'] = (
    across,
    turn,
    width = look.width,
    contrast = look.contrast,
    blur = look.blur,
  ) => {
    const moved: Pixel = pixel(place[0] + across * n[0], place[1] + across * n[1])
    return cleanScene(
      { ...size, strokes: [bar(moved, direction + turn, width)] },
      { ...look, contrast, blur },
    )
  }
  return { ...(await scanOf({ ...size, ...drawing }, look, random)), look, place, direction, rough, picture }
}
