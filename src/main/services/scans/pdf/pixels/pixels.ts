/** Pixels, row by row. bits 1: eight to a byte, each row filled up to a whole byte, a set bit is white. */
export interface Pixels {
  width: number
  height: number
  samples: 1 | 3
  bits: 1 | 8
  data: Uint8Array
}

const WHITE = 255

export const rowBytes = ({ width, samples, bits }: Pick<Pixels, 'width' | 'samples' | 'bits'>): number =>
  bits === 1 ? (width + 7) >> 3 : width * samples

/** Each sample a byte; a set bit becomes 255. */
export function inBytes(pixels: Pixels): Pixels {
  const { width, height, bits, data } = pixels
  if (bits === 8) return pixels
  const bytes = new Uint8Array(width * height)
  const row = rowBytes(pixels)
  for (let y = 0, to = 0; y < height; y++) {
    for (let x = 0; x < width; x++, to++) {
      if (((data[y * row + (x >> 3)] ?? 0) >> (7 - (x & 7))) & 1) bytes[to] = WHITE
    }
  }
  return { ...pixels, bits: 8, data: bytes }
}

/** Back to a bit for each pixel, of samples that are 0 or 255. */
export function inBits(pixels: Pixels): Pixels {
  const { width, height, data } = pixels
  const row = rowBytes({ width, samples: 1, bits: 1 })
  const bits = new Uint8Array(row * height)
  for (let y = 0, from = 0; y < height; y++) {
    for (let x = 0; x < width; x++, from++) {
      if (data[from] === WHITE) bits[y * row + (x >> 3)] = (bits[y * row + (x >> 3)] ?? 0) | (0x80 >> (x & 7))
    }
  }
  return { width, height, samples: 1, bits: 1, data: bits }
}

/** One sample for each pixel where all three are alike everywhere; else as it is. */
export function asGrey(pixels: Pixels): Pixels {
  const { width, height, samples, data } = pixels
  if (samples === 1) return pixels
  const grey = new Uint8Array(width * height)
  for (let i = 0, from = 0; i < grey.length; i++, from += 3) {
    const value = data[from] ?? 0
    if (data[from + 1] !== value || data[from + 2] !== value) return pixels
    grey[i] = value
  }
  return { width, height, samples: 1, bits: 8, data: grey }
}

export function asColour(pixels: Pixels): Pixels {
  const { samples, data } = pixels
  if (samples === 3) return pixels
  const colour = new Uint8Array(data.length * 3)
  for (let i = 0, to = 0; i < data.length; i++, to += 3) colour.fill(data[i] ?? 0, to, to + 3)
  return { ...pixels, samples: 3, data: colour }
}

/** Colours on white paper, of samples red, green, blue and how far they cover. */
export function onPaper(data: Uint8Array, width: number, height: number): Pixels {
  const colour = new Uint8Array(width * height * 3)
  for (let i = 0, from = 0, to = 0; i < width * height; i++, from += 4, to += 3) {
    const cover = (data[from + 3] ?? 0) / WHITE
    for (let k = 0; k < 3; k++) {
      colour[to + k] = Math.round((data[from + k] ?? 0) * cover + WHITE * (1 - cover))
    }
  }
  return { width, height, samples: 3, bits: 8, data: colour }
}
