/** Samples of a picture row by row, interleaved, each 0 to 2^bits − 1. */
export interface Picture {
  width: number
  height: number
  samples: 1 | 2 | 3 | 4
  bits: 1 | 8 | 16
  values: Uint16Array
}

/** A picture whose samples `at` gives, pixel by pixel. */
export function picture(
  { width, height, samples, bits }: Omit<Picture, 'values'>,
  at: (x: number, y: number) => readonly number[],
): Picture {
  const values = new Uint16Array(width * height * samples)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) values.set(at(x, y).slice(0, samples), (y * width + x) * samples)
  }
  return { width, height, samples, bits, values }
}

/** The samples of one pixel; outside of the picture those of the nearest one in it. */
export function pixelAt({ width, height, samples, values }: Picture, x: number, y: number): number[] {
  const at = (Math.min(y, height - 1) * width + Math.min(x, width - 1)) * samples
  return [...values.subarray(at, at + samples)]
}

/** A part of a picture; where it reaches beyond the edge, the edge is repeated. */
export const partOf = (whole: Picture, left: number, top: number, width: number, height: number): Picture =>
  picture({ ...whole, width, height }, (x, y) => pixelAt(whole, left + x, top + y))

/** The picture turned clockwise by quarter turns. */
export function turned(whole: Picture, quarters: number): Picture {
  const { width, height } = whole
  const size = quarters % 2 === 0 ? { width, height } : { width: height, height: width }
  return picture({ ...whole, ...size }, (x, y) => {
    if (quarters === 1) return pixelAt(whole, y, height - 1 - x)
    if (quarters === 2) return pixelAt(whole, width - 1 - x, height - 1 - y)
    if (quarters === 3) return pixelAt(whole, width - 1 - y, x)
    return pixelAt(whole, x, y)
  })
}

/** The picture as seen in a mirror that stands at its side. */
export const mirrored = (whole: Picture): Picture =>
  picture(whole, (x, y) => pixelAt(whole, whole.width - 1 - x, y))

/** A 1-bit picture in the greys 0 and 255. */
export const asGrey = (whole: Picture): Picture => ({
  ...whole,
  bits: 8,
  values: whole.bits === 1 ? whole.values.map((value) => value * 255) : whole.values,
})

/** Rows as files have them: bits packed from the most significant on, each row from a byte boundary. */
export function packedRows({ width, height, samples, bits, values }: Picture, little = false): Buffer[] {
  return Array.from({ length: height }, (_, y) => {
    const row = values.subarray(y * width * samples, (y + 1) * width * samples)
    if (bits === 8) return Buffer.from(Uint8Array.from(row))
    if (bits === 1) {
      const packed = Buffer.alloc(Math.ceil(row.length / 8))
      row.forEach((value, i) => {
        packed[i >> 3] = (packed[i >> 3] ?? 0) | (value << (7 - (i & 7)))
      })
      return packed
    }
    const packed = Buffer.alloc(row.length * 2)
    row.forEach((value, i) => {
      if (little) packed.writeUInt16LE(value, 2 * i)
      else packed.writeUInt16BE(value, 2 * i)
    })
    return packed
  })
}
