import type { Pixel } from '../../core/geometry/frames.ts'

/** A picture of a whole sheet in greys, row by row, smaller than its scan. */
interface Greys {
  width: number
  height: number
  data: Uint8Array
}

const WHITE = 255

/** How much is drawn about a place, in pixels of the scan. */
export type InkAbout = (at: Pixel, around: number) => number

/**
 * How much is drawn where on a sheet, told by how the greys of a small picture of it change from one pixel to the next:
 * strokes and lettering change them, stains and the tone of the paper hardly do, and it is the same for a negative. Sums
 * over rectangles (integral image) make each answer the same small work.
 * @param scanWidth pixels of the scan across, that `at` is in
 */
export function inkMap({ width, height, data }: Greys, scanWidth: number): InkAbout {
  const stride = width + 1
  const sums = new Float64Array(stride * (height + 1))
  for (let y = 0; y < height; y++) {
    let row = 0
    for (let x = 0; x < width; x++) {
      const here = data[y * width + x] ?? 0
      const right = x + 1 < width ? (data[y * width + x + 1] ?? here) : here
      const below = y + 1 < height ? (data[(y + 1) * width + x] ?? here) : here
      row += Math.abs(right - here) + Math.abs(below - here)
      sums[(y + 1) * stride + x + 1] = (sums[y * stride + x + 1] ?? 0) + row
    }
  }
  const small = width / scanWidth
  const within = (value: number, most: number): number => Math.min(most, Math.max(0, Math.round(value)))
  return ([x, y], around) => {
    const half = Math.max(0.5, around * small)
    const [left, right] = [within(x * small - half, width), within(x * small + half, width)]
    const [top, bottom] = [within(y * small - half, height), within(y * small + half, height)]
    const area = (right - left) * (bottom - top)
    if (area === 0) return 0
    const at = (column: number, line: number): number => sums[line * stride + column] ?? 0
    return (at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top)) / (2 * WHITE * area)
  }
}
