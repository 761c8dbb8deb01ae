import sharp from 'sharp'
import { blurred } from './blurred.ts'
import type { Dice } from './dice.ts'
import type { DrawnGrey } from './grey.ts'
import { LEVEL, type Level, within } from './levels.ts'
import { slowNoise } from './slow-noise.ts'

/** Ink as it was laid on: 0 bare, 1 full. */
export interface Ink {
  readonly width: number
  readonly height: number
  readonly cover: Float32Array
}

/** Ink of a canvas that was drawn on in black: its alpha. */
export function inkOf(rgba: Uint8ClampedArray | Uint8Array, width: number, height: number): Ink {
  const cover = new Float32Array(width * height)
  for (let i = 0; i < cover.length; i++) cover[i] = (rgba[4 * i + 3] ?? 0) / 255
  return { width, height, cover }
}

/** Small quick numbers for single pixels (xorshift, Marsaglia 2003): about normal, variance 1, as a sum of four. */
function pixelNoise(seed: number): () => number {
  let s = seed | 1
  return () => {
    s ^= s << 13
    s ^= s >>> 17
    s ^= s << 5
    const sum = (s & 255) + ((s >>> 8) & 255) + ((s >>> 16) & 255) + (s >>> 24)
    return (sum - 510) / 147.8
  }
}

const clamped = (share: number): number => Math.min(1, Math.max(0, share))

interface Stain {
  readonly x: number
  readonly y: number
  readonly radius: number
  readonly dark: number
}

function stains(ink: Ink, h: number, share: number, d: Dice): Stain[] {
  if (!d.happens(share)) return []
  return Array.from({ length: d.whole(1, 3) }, () => ({
    x: d.between(0, ink.width),
    y: d.between(0, ink.height),
    radius: h * d.between(0.7, 2.5),
    dark: d.between(0.06, 0.22),
  }))
}

/** What a scanner gives of ink at a level: ground, stains, fading, blur, noise, and what JPEG makes of it. `h` in pixels. */
export async function scanInk(ink: Ink, h: number, level: Level, d: Dice): Promise<DrawnGrey> {
  const of = LEVEL[level]
  const { width, height } = ink
  const sigma = Math.max(0.45, within(of.blur, d) * h)
  const cover = blurred(ink.cover, width, height, sigma)
  const print = d.happens(of.blueprint)
  const ground = print ? d.between(50, 95) : d.between(195, 245)
  const full = print ? 240 - ground : ground - 12
  const contrast = within(of.contrast, d)
  // The eye takes a stroke's pixels together: small lettering, with fewer of them, is lost sooner.
  const sigmaNoise = ((contrast * full) / within(of.noiseRatio, d)) * Math.min(1, h / 28)
  const wander = within(of.unevenGround, d)
  const slow = slowNoise(width, height, Math.max(24, 3 * h, Math.min(width, height) / 4), d)
  const wear = slowNoise(width, height, Math.max(12, 1.2 * h), d)
  const fadeTo = d.happens(of.faded.share) ? within(of.faded.to, d) : 1
  const fadeAngle = d.between(0, 2 * Math.PI)
  const [fx, fy] = [Math.cos(fadeAngle) / width, Math.sin(fadeAngle) / height]
  const spots = stains(ink, h, of.stained, d)
  const noise = pixelNoise(d.whole(1, 2 ** 30))
  const pixels = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) {
    const near = spots.filter((spot) => (y - spot.y) ** 2 < 3 * spot.radius ** 2)
    let under = 0
    for (let x = 0; x < width; x++) {
      // It wanders too slowly for four pixels to tell.
      if (x % 4 === 0) under = ground + wander * slow(x, y)
      let paper = under
      for (const spot of near) {
        const round = ((x - spot.x) ** 2 + (y - spot.y) ** 2) / spot.radius ** 2
        if (round > 3) continue
        const q = round * (1 + 0.5 * wear(x, y))
        // A stain has a rim where it dried.
        if (q < 1.3) paper *= 1 - spot.dark * (q < 1 ? 0.7 + 0.3 * q * q : (1.3 - q) / 0.3)
      }
      const across = 0.5 + (x - width / 2) * fx + (y - height / 2) * fy
      const faded = fadeTo === 1 ? 1 : 1 - (1 - fadeTo) * (clamped(across) + 0.2 * (1 + wear(x, y)))
      const inked = (cover[y * width + x] ?? 0) * contrast * faded
      const value = print ? paper + (240 - paper) * inked : paper - (paper - 12) * inked
      pixels[y * width + x] = Math.min(255, Math.max(0, Math.round(value + sigmaNoise * noise())))
    }
  }
  const grey = { width, height, pixels }
  return d.happens(of.jpeg.share) ? throughJpeg(grey, Math.round(within(of.jpeg.quality, d))) : grey
}

async function throughJpeg({ width, height, pixels }: DrawnGrey, quality: number): Promise<DrawnGrey> {
  const packed = await sharp(pixels, { raw: { width, height, channels: 1 } })
    .jpeg({ quality })
    .toBuffer()
  const unpacked = await sharp(packed).greyscale().raw().toBuffer()
  return { width, height, pixels: new Uint8Array(unpacked) }
}
