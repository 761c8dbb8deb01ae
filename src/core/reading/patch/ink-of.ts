import type { InkField } from '../network/glyph-network.ts'
import type { Upright } from './sample-upright.ts'

/** Of these pixels each way the ground is taken to be one. */
const BLOCK = 24
/** Share of the pixels of a block that are ground at least, or nearly: lettering covers less than half. */
const GROUND_SHARE = 0.7
/** Of all pixels so many are no darker than full ink: lines and letters cover more than what is left. */
const INK_SHARE = 0.985

/**
 * Ink of an upright rectangle: its ground lifted, which may differ from place to place, whether it is dark on light or
 * light on dark, and set so that the ground is about 0 and full ink about 1.
 */
export function inkOf(upright: Upright): InkField {
  const { width, height, grey } = upright
  const dark = lifted(upright, 1)
  const light = lifted(upright, -1)
  const ink = weight(dark) >= weight(light) ? dark : light
  const sorted = Float32Array.from(ink).sort()
  const noise = quantile(sorted, 0.5)
  const full = Math.max(quantile(sorted, INK_SHARE), 4)
  for (let i = 0; i < ink.length; i++)
    ink[i] = Math.min(1.2, Math.max(0, ((ink[i] ?? 0) - Math.max(0, noise)) / (full - Math.max(0, noise))))
  return { width, height, ink: grey.length === 0 ? new Float32Array(0) : ink }
}

/** How much stands out: ink does so far more than the ground's noise, which goes both ways. */
function weight(ink: Float32Array): number {
  let sum = 0
  for (const v of ink) if (v > 0) sum += v ** 3
  return sum
}

/** What is darker than the ground round it, or lighter where `sign` is −1. */
function lifted({ width, height, grey }: Upright, sign: 1 | -1): Float32Array {
  const [across, down] = [Math.max(1, Math.round(width / BLOCK)), Math.max(1, Math.round(height / BLOCK))]
  const ground = new Float32Array(across * down)
  for (let j = 0; j < down; j++)
    for (let i = 0; i < across; i++) {
      const values: number[] = []
      // Blocks overlap by half of their size each way: what is inked all over in one is seen beside others.
      const [x0, x1] = [Math.floor(((i - 0.5) * width) / across), Math.ceil(((i + 1.5) * width) / across)]
      const [y0, y1] = [Math.floor(((j - 0.5) * height) / down), Math.ceil(((j + 1.5) * height) / down)]
      for (let y = Math.max(0, y0); y < Math.min(height, y1); y++)
        for (let x = Math.max(0, x0); x < Math.min(width, x1); x++)
          values.push(sign * (grey[y * width + x] ?? 0))
      ground[j * across + i] = quantile(Float32Array.from(values).sort(), GROUND_SHARE)
    }
  const ink = new Float32Array(width * height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const u = Math.min(across - 1, Math.max(0, ((x + 0.5) * across) / width - 0.5))
      const v = Math.min(down - 1, Math.max(0, ((y + 0.5) * down) / height - 0.5))
      const [i, j] = [Math.floor(u), Math.floor(v)]
      const [i1, j1] = [Math.min(across - 1, i + 1), Math.min(down - 1, j + 1)]
      const g = (p: number, q: number): number => ground[q * across + p] ?? 0
      const base =
        (g(i, j) * (1 - u + i) + g(i1, j) * (u - i)) * (1 - v + j) +
        (g(i, j1) * (1 - u + i) + g(i1, j1) * (u - i)) * (v - j)
      ink[y * width + x] = base - sign * (grey[y * width + x] ?? 0)
    }
  return ink
}

/** Of sorted values, the one that a share of them lie below. */
function quantile(sorted: Float32Array, share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0
}
