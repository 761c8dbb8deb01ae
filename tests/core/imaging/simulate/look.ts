import type { RandomStream } from '../../../../src/core/uncertainty/random.ts'

/** What a simulated stroke and its scan look like. */
export interface Look {
  /** Pixels. */
  width: number
  /** Standard deviation of the blur, pixels. */
  blur: number
  /** Grey values between ink and ground. */
  contrast: number
  dark: boolean
  ground: number
  /** Change of the ground per pixel, grey values. */
  slope: [number, number]
  /** Standard deviation, grey values. */
  noise: number
  /** Blur of the noise, pixels; 0 for white noise. */
  grain: number
  finish: 'grey' | 'jpeg' | 'one bit'
  /** Where between ground and ink one bit is cut; half way unless said otherwise. */
  cut?: number
}

/** Dark ink of middling width on even paper, a little blurred, without noise: for tests of one part by itself. */
export const PLAIN_LOOK: Look = {
  width: 5,
  blur: 0.7,
  contrast: 120,
  dark: true,
  ground: 200,
  slope: [0, 0],
  noise: 0,
  grain: 0,
  finish: 'grey',
}

export type Kind = 'noise' | 'blur' | 'grain' | 'JPEG' | 'one bit'

export const between = (random: RandomStream, low: number, high: number): number =>
  low + (high - low) * random.uniform()

const evenly = (random: RandomStream, low: number, high: number): number =>
  Math.exp(between(random, Math.log(low), Math.log(high)))

/** Widths of 2 to 12 pixels, contrast of 15 to 100 %, dark on light and light on dark, uneven ground. */
export function someLook(kind: Kind, random: RandomStream): Look {
  const contrast = 255 * between(random, 0.15, 1)
  const lower = between(random, 0, 255 - contrast)
  const dark = random.uniform() < 0.7
  const uneven = Math.min(0.25, contrast / 300)
  const look: Look = {
    width: between(random, 2, 12),
    blur: 0.4,
    contrast,
    dark,
    ground: dark ? lower + contrast : lower,
    slope: [between(random, -uneven, uneven), between(random, -uneven, uneven)],
    noise: Math.max(0.7, contrast / evenly(random, 3, 30)),
    grain: 0,
    finish: 'grey',
  }
  if (kind === 'noise') return { ...look, blur: random.uniform() < 0.5 ? 0 : between(random, 0.3, 0.6) }
  if (kind === 'blur') return { ...look, blur: between(random, 0.6, 2) }
  if (kind === 'grain') return { ...look, blur: between(random, 0.5, 1), grain: between(random, 0.5, 1.2) }
  if (kind === 'JPEG') {
    const noise = Math.max(0.7, contrast / evenly(random, 6, 40))
    return { ...look, noise, blur: between(random, 0.4, 1), finish: 'jpeg' }
  }
  const noise = contrast / evenly(random, 8, 50)
  return { ...look, noise, slope: [0, 0], blur: between(random, 0.4, 0.8), finish: 'one bit' }
}

export const inkOf = ({ contrast, dark }: Look): number => (dark ? -contrast : contrast)
