import type { Chance } from './chance.ts'
import { DISTORTION, toPixel } from './sheet-distortion.ts'

/** What has darkened the paper: a field of light kept, 1 = all, and how much ink has been washed out, 0 = none. */
export interface Blemishes {
  light: Float32Array
  washed: Float32Array
  width: number
  height: number
  /** One cell of the fields for each block of this many pixels. */
  block: number
}

const BLOCK = 4

/** A field read between its cells, at a pixel. */
export function fieldAt(
  values: Float32Array,
  { width, height, block }: Blemishes,
  x: number,
  y: number,
): number {
  const gx = Math.min(Math.max(x / block - 0.5, 0), width - 1.001)
  const gy = Math.min(Math.max(y / block - 0.5, 0), height - 1.001)
  const i = Math.floor(gx)
  const j = Math.floor(gy)
  const [s, t] = [gx - i, gy - j]
  const at = j * width + i
  const upper = (values[at] ?? 0) * (1 - s) + (values[at + 1] ?? 0) * s
  const lower = (values[at + width] ?? 0) * (1 - s) + (values[at + width + 1] ?? 0) * s
  return upper * (1 - t) + lower * t
}

/** Foxing, tide marks and one stain over a figure. */
export function blemishes(
  chance: Chance,
  smudge: readonly [x: number, y: number, w: number, h: number],
): Blemishes {
  const width = Math.ceil(DISTORTION.imageWidth / BLOCK)
  const height = Math.ceil(DISTORTION.imageHeight / BLOCK)
  const field: Blemishes = {
    light: new Float32Array(width * height).fill(1),
    washed: new Float32Array(width * height),
    width,
    height,
    block: BLOCK,
  }
  for (let i = 0; i < 220; i++) {
    const [x, y] = toPixel([chance.between(0, DISTORTION.width), chance.between(0, DISTORTION.height)])
    const radius = 4 + 13 * chance.uniform() ** 3 * 2
    spot(field, x, y, radius, 0.05 + 0.13 * chance.uniform())
  }
  tide(field, chance, toPixel([395, 20]), 420, 0.1)
  tide(field, chance, toPixel([30, 262]), 330, 0.09)
  tide(field, chance, toPixel([262, 214]), 210, 0.07)
  const [x, y, w, h] = smudge
  stain(field, chance, [x + 0.48 * w, y + 0.5 * h], 0.62 * w)
  return field
}

function each(
  field: Blemishes,
  x: number,
  y: number,
  reach: number,
  visit: (i: number, dx: number, dy: number) => void,
) {
  const b = field.block
  const [i0, i1] = [
    Math.max(0, Math.floor((x - reach) / b)),
    Math.min(field.width - 1, Math.ceil((x + reach) / b)),
  ]
  const [j0, j1] = [
    Math.max(0, Math.floor((y - reach) / b)),
    Math.min(field.height - 1, Math.ceil((y + reach) / b)),
  ]
  for (let j = j0; j <= j1; j++) {
    for (let i = i0; i <= i1; i++) visit(j * field.width + i, (i + 0.5) * b - x, (j + 0.5) * b - y)
  }
}

function darken(field: Blemishes, i: number, by: number): void {
  field.light[i] = (field.light[i] ?? 1) * (1 - by)
}

function spot(field: Blemishes, x: number, y: number, radius: number, depth: number): void {
  each(field, x, y, 3 * radius, (i, dx, dy) => {
    darken(field, i, depth * Math.exp(-(dx * dx + dy * dy) / (2 * radius * radius)))
  })
}

/** A radius that wanders round a blot. */
function wandering(chance: Chance, radius: number): (angle: number) => number {
  const waves = [2, 3, 5, 7].map((n) => ({
    n,
    size: (0.16 * chance.normal()) / n,
    phase: 6.3 * chance.uniform(),
  }))
  return (angle) =>
    radius * (1 + waves.reduce((s, { n, size, phase }) => s + size * Math.sin(n * angle + phase), 0))
}

/** Where water dried: little change within, a brown line at its edge. */
function tide(
  field: Blemishes,
  chance: Chance,
  [x, y]: readonly [number, number],
  radius: number,
  depth: number,
) {
  const edge = wandering(chance, radius)
  each(field, x, y, 1.6 * radius, (i, dx, dy) => {
    const off = Math.hypot(dx, dy) - edge(Math.atan2(dy, dx))
    const line = Math.exp(-((off / 9) ** 2)) * (off > 0 ? 0.8 : 1)
    const inside = off < 0 ? 0.28 + 0.5 * Math.exp(off / 60) : 0
    darken(field, i, depth * (line + 0.6 * inside))
    if (off < 0) field.washed[i] = Math.max(field.washed[i] ?? 0, 0.1)
  })
}

/** Something spilt: darkest where it dried last, and the ink under it run. */
function stain(field: Blemishes, chance: Chance, [x, y]: readonly [number, number], radius: number): void {
  const edge = wandering(chance, radius)
  const pool = wandering(chance, 0.5 * radius)
  each(field, x, y, 1.7 * radius, (i, dx, dy) => {
    // Broader than high: it ran along the line of writing.
    const angle = Math.atan2(dy, dx)
    const off = Math.hypot(dx, 1.35 * dy) - edge(angle)
    const deep = Math.hypot(dx + 0.2 * radius, 1.2 * dy) - pool(angle)
    const within = 1 / (1 + Math.exp(off / 11))
    const pooled = 1 / (1 + Math.exp(deep / 16))
    darken(field, i, 0.17 * within + 0.3 * pooled + 0.1 * Math.exp(-((off / 8) ** 2)))
    field.washed[i] = Math.max(field.washed[i] ?? 0, 0.33 * within + 0.62 * pooled)
  })
}
