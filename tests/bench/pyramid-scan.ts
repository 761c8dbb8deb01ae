/** Scans of one large invented drawing, as an archive's scanner gives them: in grey, and in one bit. */
import sharp from 'sharp'

export const WIDTH = 13_600
export const HEIGHT = 17_600

const PAPER = 224
const INK = 46
/** Standard deviation of the scanner's noise, grey values. */
const NOISE = 4
/** Pixels to a cell of the paper's own shading. */
const CELL = 64

/** A multiplicative sequence, so that every run draws the same. Park and Miller, CACM 31 (1988). */
function numbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

/** Values to add to the paper, about normal: sums of four even ones. */
function noiseTable(next: () => number): Int8Array {
  const spread = NOISE * Math.sqrt(12 / 4)
  return Int8Array.from({ length: 65_536 }, () =>
    Math.round(spread * (next() + next() + next() + next() - 2)),
  )
}

/** Stains and uneven light: how much darker than clean paper each cell is. */
function shading(next: () => number): { at: Float32Array; columns: number } {
  const [columns, rows] = [Math.ceil(WIDTH / CELL) + 1, Math.ceil(HEIGHT / CELL) + 1]
  const at = new Float32Array(columns * rows)
  const stains = Array.from({ length: 25 }, () => ({
    x: next() * columns,
    y: next() * rows,
    radius: 3 + 20 * next(),
    depth: 10 + 50 * next(),
  }))
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      let dark = (12 * column) / columns
      for (const { x, y, radius, depth } of stains) {
        dark += depth * Math.exp(-((column - x) ** 2 + (row - y) ** 2) / (2 * radius ** 2))
      }
      at[row * columns + column] = dark
    }
  }
  return { at, columns }
}

/** How much of each pixel is inked, 0 to 255. */
async function inked(next: () => number): Promise<Uint8Array> {
  const ink = new Uint8Array(WIDTH * HEIGHT)
  const put = (x: number, y: number, value: number): void => {
    if (x < 0 || y < 0 || x >= WIDTH || y >= HEIGHT) return
    const at = y * WIDTH + x
    if ((ink[at] ?? 0) < value) ink[at] = value
  }
  /** A stroke along a path of points at most a pixel apart, with soft edges. */
  const dab = (x: number, y: number, half: number): void => {
    const reach = Math.ceil(half + 1)
    for (let j = Math.floor(y) - reach; j <= y + reach; j++) {
      for (let i = Math.floor(x) - reach; i <= x + reach; i++) {
        const off = Math.hypot(i + 0.5 - x, j + 0.5 - y)
        put(i, j, Math.round(255 * Math.min(1, Math.max(0, half + 0.5 - off))))
      }
    }
  }
  for (let k = 0; k < 90; k++) {
    const [x, y, half] = [WIDTH * next(), HEIGHT * next(), 1 + 2 * next()]
    const [length, angle] = [
      800 + 6000 * next(),
      (Math.PI / 2) * Math.floor(4 * next()) + (next() < 0.3 ? next() : 0),
    ]
    for (let s = 0; s < length; s++) dab(x + s * Math.cos(angle), y + s * Math.sin(angle), half)
  }
  for (let k = 0; k < 60; k++) {
    const [x, y, radius, half] = [WIDTH * next(), HEIGHT * next(), 60 + 900 * next(), 1 + 2 * next()]
    const steps = Math.ceil(2 * Math.PI * radius)
    for (let s = 0; s < steps; s++) {
      dab(
        x + radius * Math.cos((2 * Math.PI * s) / steps),
        y + radius * Math.sin((2 * Math.PI * s) / steps),
        half,
      )
    }
  }
  const text = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="140"><text x="10" y="100" font-size="90"
    font-family="serif">NO. 16 GA. 14 3/8 DIA.</text></svg>`
  const { data, info } = await sharp(Buffer.from(text))
    .flatten({ background: '#fff' })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true })
  for (let k = 0; k < 500; k++) {
    const [left, top] = [Math.floor(WIDTH * next()), Math.floor(HEIGHT * next())]
    for (let y = 0; y < info.height; y++) {
      for (let x = 0; x < info.width; x++)
        put(left + x, top + y, 255 - (data[(y * info.width + x) * info.channels] ?? 255))
    }
  }
  return ink
}

/** Makes both scans. */
export async function makeScans(grey: string, bitonal: string): Promise<void> {
  const next = numbers(16)
  const [noise, { at: dark, columns }, ink] = [noiseTable(next), shading(next), await inked(next)]
  const raw = { raw: { width: WIDTH, height: HEIGHT, channels: 1 as const }, limitInputPixels: false }
  const scan = new Uint8Array(ink.length)
  let state = 1
  for (let y = 0, at = 0; y < HEIGHT; y++) {
    const row = Math.floor(y / CELL) * columns
    for (let x = 0; x < WIDTH; x++, at++) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
      const paper = PAPER - (dark[row + (x >> 6)] ?? 0)
      const share = (ink[at] ?? 0) / 255
      const value = paper + share * (INK - paper) + (noise[state >>> 16] ?? 0)
      scan[at] = Math.min(255, Math.max(0, value))
    }
  }
  await sharp(scan, raw).toColourspace('b-w').tiff({ compression: 'lzw', predictor: 'none' }).toFile(grey)
  for (let i = 0; i < ink.length; i++) scan[i] = (ink[i] ?? 0) > 127 ? 0 : 255
  await sharp(scan, raw).toColourspace('b-w').tiff({ bitdepth: 1, compression: 'ccittfax4' }).toFile(bitonal)
}
