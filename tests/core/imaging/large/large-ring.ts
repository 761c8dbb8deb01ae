import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between } from '../simulate/look.ts'

/** Half the length of a stroke across, pixels. */
export const ACROSS = 120
/** So far to both sides of the stroke the scan is there, pixels: as far as a search looks. */
const BESIDE = 75
export const [PAPER, INK] = [214, 62] as const
/** Where a pixel is sampled, of its side: ink lies on it in part. */
const SAMPLES = [-1 / 3, 0, 1 / 3] as const

/** A round stroke as large as a sheet, on a scan. */
export interface LargeRing {
  centre: Pixel
  radius: number
  /** Of the stroke, pixels; and the standard deviation of the blur. */
  width: number
  blur: number
  /** Of a pixel, grey values. */
  noise: number
  /** Radians, from x towards y; from where to where it is drawn. */
  from: number
  sweep: number
  /** What lies over it: strokes across, and stains. */
  dirt: readonly Dirt[]
}

/** Something over a stroke, about a place: a straight stroke at an angle, or a stain that is round. */
export type Dirt =
  | { kind: 'line'; at: Pixel; normal: readonly [number, number]; half: number }
  | { kind: 'stain'; at: Pixel; radius: number; grey: number }

/** @param every one of it for so many pixels of the stroke */
export function dirtOn(
  { centre, radius, from, sweep }: Pick<LargeRing, 'centre' | 'radius' | 'from' | 'sweep'>,
  every: number,
  random: RandomStream,
): Dirt[] {
  const count = Math.round((radius * sweep) / every)
  return Array.from({ length: count }, (): Dirt => {
    const angle = from + sweep * random.uniform()
    const away = radius + between(random, -30, 30)
    const at = pixel(centre[0] + away * Math.cos(angle), centre[1] + away * Math.sin(angle))
    if (random.uniform() < 0.5)
      return { kind: 'stain', at, radius: between(random, 5, 60), grey: between(random, 20, 120) }
    const across = angle + Math.PI / 2 + between(random, -1.2, 1.2)
    return {
      kind: 'line',
      at,
      normal: [Math.cos(across), Math.sin(across)],
      half: between(random, 1, 4),
    }
  })
}

/** Draws one window of the scan. */
type DrawWindow = (ring: LargeRing, left: number, top: number, side: number) => Promise<Float64Array>

/**
 * The scan along a ring: windows of it where the ring passes, and nothing of what lies inside or far beside.
 * @param side of a window, pixels; draw: how one is drawn, before noise is added
 */
export async function scanAlong(
  ring: LargeRing,
  random: RandomStream,
  side = 64,
  draw: DrawWindow = async (...what) => byDistance(...what),
): Promise<GreyWindow[]> {
  const { centre, radius } = ring
  const windows: GreyWindow[] = []
  const far = radius + BESIDE
  const corner = (side / 2) * Math.SQRT2
  const first = (at: number): number => Math.floor((at - far) / side) * side
  for (let top = first(centre[1]); top < centre[1] + far; top += side) {
    for (let left = first(centre[0]); left < centre[0] + far; left += side) {
      const middle = pixel(left + side / 2, top + side / 2)
      const away = Math.hypot(middle[0] - centre[0], middle[1] - centre[1])
      if (Math.abs(away - radius) > BESIDE + corner || !isAlong(ring, middle, side)) continue
      const data = Uint8Array.from(await draw(ring, left, top, side), (grey) => {
        const noise = ring.noise * (random.uniform() + random.uniform() + random.uniform() - 1.5) * 2
        return Math.max(0, Math.min(255, Math.round(grey + noise)))
      })
      windows.push({ left, top, width: side, height: side, data })
    }
  }
  return windows
}

/** The angle from where the ring begins, in its own way about. */
const onward = ({ centre, from }: LargeRing, [x, y]: Pixel): number =>
  (((Math.atan2(y - centre[1], x - centre[0]) - from) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)

function isAlong(ring: LargeRing, at: Pixel, side: number): boolean {
  const more = (2 * side) / ring.radius
  const angle = onward(ring, at)
  return angle <= ring.sweep + more || angle >= 2 * Math.PI - more
}

/** What may be seen of the dirt in a window. */
export const dirtIn = (ring: LargeRing, left: number, top: number, side: number): Dirt[] =>
  ring.dirt.filter(
    ({ at: [x, y], ...dirt }) =>
      Math.hypot(x - left - side / 2, y - top - side / 2) <
      side + (dirt.kind === 'stain' ? dirt.radius : ACROSS + dirt.half),
  )

/** Grey values of a window, by how far each pixel is from what is drawn. */
function byDistance(ring: LargeRing, left: number, top: number, side: number): Float64Array {
  const data = new Float64Array(side * side)
  const over = dirtIn(ring, left, top, side)
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) {
      const [x, y] = [left + column + 0.5, top + row + 0.5]
      let grey = greyOfRing(ring, x, y)
      for (const dirt of over) grey = Math.min(grey, greyOf(dirt, x, y))
      data[row * side + column] = grey
    }
  }
  return data
}

/** The stroke through a lens, over the area of a pixel. */
function greyOfRing(ring: LargeRing, x: number, y: number): number {
  const { centre, radius, width, blur } = ring
  const away = Math.hypot(x - centre[0], y - centre[1]) - radius
  if (Math.abs(away) > width / 2 + 6 * blur + 1 || onward(ring, pixel(x, y)) > ring.sweep) return PAPER
  let ink = 0
  for (const dy of SAMPLES) {
    for (const dx of SAMPLES) {
      const d = Math.hypot(x + dx - centre[0], y + dy - centre[1]) - radius
      ink += bell((d + width / 2) / blur) - bell((d - width / 2) / blur)
    }
  }
  return PAPER + ((INK - PAPER) * ink) / SAMPLES.length ** 2
}

function greyOf(dirt: Dirt, x: number, y: number): number {
  const [dx, dy] = [x - dirt.at[0], y - dirt.at[1]]
  if (dirt.kind === 'stain') return Math.hypot(dx, dy) < dirt.radius ? dirt.grey : PAPER
  const across = Math.abs(dx * dirt.normal[0] + dy * dirt.normal[1])
  if (Math.abs(dy * dirt.normal[0] - dx * dirt.normal[1]) > ACROSS) return PAPER
  return PAPER + (INK - PAPER) * Math.max(0, Math.min(1, dirt.half + 0.5 - across))
}

/** Share of a normal distribution below z (Abramowitz and Stegun 26.2.17, to 7.5e-8). */
function bell(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const density = Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI)
  const tail =
    density * t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  return z > 0 ? 1 - tail : tail
}
