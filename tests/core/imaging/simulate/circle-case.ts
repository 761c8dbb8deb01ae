import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { hide } from './hide.ts'
import { between, type Look } from './look.ts'
import type { Scene } from './picture.ts'
import { cleanScene, type Scan, scanOf } from './scan-of.ts'
import { ring } from './shapes.ts'

const MARGIN = 34

export interface CircleCase extends Scan {
  look: Look
  centre: Pixel
  radius: number
  /** Angles from … to of the arc that is drawn and picked, radians; 2π apart for a whole circle. */
  sector: [number, number]
  rough: [Pixel, Pixel, Pixel]
  /** The scene without noise of the stroke alone, its centre and radius changed by this much. */
  picture: (dx: number, dy: number, dr: number) => Scene
}

interface Round {
  radii: readonly [number, number]
  /** Whole, or an arc of at least 60 degrees. */
  whole: boolean
  hidden?: number
}

export async function circleCase(
  look: Look,
  random: RandomStream,
  { radii, whole, hidden = 0 }: Round,
): Promise<CircleCase> {
  const radius = Math.exp(between(random, Math.log(radii[0]), Math.log(radii[1])))
  const start = between(random, -Math.PI, Math.PI)
  const sweep = whole ? 2 * Math.PI : between(random, Math.PI / 3, 1.6 * Math.PI)
  const sector: [number, number] = [start, start + sweep]
  const on = (a: number, r = radius): Pixel => pixel(r * Math.cos(a), r * Math.sin(a))
  const way = Array.from({ length: 65 }, (_, i) => on(start + (sweep * i) / 64))
  const [left, top] = [Math.min(...way.map((p) => p[0])), Math.min(...way.map((p) => p[1]))]
  const [right, bottom] = [Math.max(...way.map((p) => p[0])), Math.max(...way.map((p) => p[1]))]
  const size = { width: Math.ceil(right - left + 2 * MARGIN), height: Math.ceil(bottom - top + 2 * MARGIN) }
  const centre: Pixel = pixel(MARGIN - left + between(random, 0, 1), MARGIN - top + between(random, 0, 1))
  // The pen runs on a little beyond the picks.
  const inked = whole ? undefined : ([sector[0] - 3 / radius, sector[1] + 3 / radius] as const)
  const stroke = ring(centre, radius, look.width, inked)
  const drawing =
    hidden > 0
      ? hide(stroke, alongCircle(centre, radius, start, sweep), look, hidden, random)
      : { strokes: [stroke], stains: [] }
  const away = Math.min(2.5, radius / 10)
  const pick = (share: number): Pixel => {
    const [x, y] = on(start + share * sweep, radius + between(random, -away, away))
    return pixel(centre[0] + x, centre[1] + y)
  }
  return {
    ...(await scanOf({ ...size, ...drawing }, look, random)),
    look,
    centre,
    radius,
    sector,
    rough: whole ? [pick(0), pick(1 / 3), pick(2 / 3)] : [pick(0), pick(between(random, 0.4, 0.6)), pick(1)],
    picture: (dx, dy, dr) =>
      cleanScene(
        { ...size, strokes: [ring(pixel(centre[0] + dx, centre[1] + dy), radius + dr, look.width, inked)] },
        look,
      ),
  }
}

function alongCircle(centre: Pixel, radius: number, start: number, sweep: number) {
  const angle = (s: number) => start + s / radius
  return {
    length: radius * sweep,
    place: (s: number): Pixel =>
      pixel(centre[0] + radius * Math.cos(angle(s)), centre[1] + radius * Math.sin(angle(s))),
    direction: (s: number) => angle(s) + Math.PI / 2,
  }
}
