import { type Pixel, pixel } from '../../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'
import { between } from './look.ts'
import { draw, type Layer } from './picture.ts'
import { noisy, rounded, throughJpeg } from './scan.ts'
import { halfPlane, type Shape, softStain, spot } from './shapes.ts'

export const EMPTY_PLACES = [
  'blank',
  'noise',
  'grain',
  'JPEG',
  'soft stain',
  'step edge',
  'specks',
  'weave',
] as const
export type EmptyPlace = (typeof EMPTY_PLACES)[number]

/** A square window, in the middle of which no stroke runs. */
export async function withoutStroke(
  kind: EmptyPlace,
  size: number,
  random: RandomStream,
): Promise<GreyWindow> {
  const dark = random.uniform() < 0.5
  const ground = dark ? between(random, 140, 230) : between(random, 30, 110)
  const ink = dark ? -between(random, 40, 110) : between(random, 40, 110)
  const slope = [between(random, -0.2, 0.2), between(random, -0.2, 0.2)] as const
  const strokes: Layer[] = []
  const stains: Layer[] = []
  const somewhere = (share: number): Pixel =>
    pixel(size / 2 + between(random, -share, share) * size, size / 2 + between(random, -share, share) * size)
  if (kind === 'soft stain') {
    for (let i = 0; i < 3; i++) {
      stains.push({
        shape: softStain(somewhere(0.35), between(random, 9, 25)),
        adds: ink * between(random, 0.3, 1),
      })
    }
  } else if (kind === 'step edge') {
    strokes.push({ shape: halfPlane(somewhere(0.06), between(random, -Math.PI, Math.PI)), adds: ink })
  } else if (kind === 'specks') {
    for (let i = 0; i < (size / 25) ** 2; i++) {
      strokes.push({ shape: spot(somewhere(0.5), between(random, 0.7, 3)), adds: ink })
    }
  } else if (kind === 'weave') {
    stains.push({ shape: weave(random), adds: between(random, 4, 14) })
  }
  const noise = kind === 'blank' ? 0.4 : between(random, 1, 14)
  const grain = kind === 'grain' ? between(random, 0.6, 1.6) : 0
  const clean = draw({
    width: size,
    height: size,
    ground,
    slope,
    strokes,
    stains,
    blur: between(random, 0.4, 1.2),
  })
  const window = rounded(noisy(clean, noise, random, grain))
  return kind === 'JPEG' ? throughJpeg(window) : window
}

/** Linen: threads along and across in turn lie on top. */
function weave(random: RandomStream): Shape {
  const period = between(random, 3, 9)
  const turn = between(random, -0.2, 0.2)
  const [c, s] = [Math.cos(turn) / period, Math.sin(turn) / period]
  return (x, y) => Math.sin(Math.PI * (c * x + s * y)) * Math.sin(Math.PI * (c * y - s * x))
}
