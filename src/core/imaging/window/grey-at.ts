import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { type GreyPicture, windowsOf } from './grey-picture.ts'

const { grey: greyOf } = elements

/**
 * The grey value of a pixel, 0 black to 255 white; not a number where the picture has none.
 * @param column and row: whole pixels of the scan
 */
export function greyOfPixel(picture: GreyPicture, column: number, row: number): number {
  for (const { left, top, width, height, data } of windowsOf(picture)) {
    const [x, y] = [column - left, row - top]
    if (x >= 0 && y >= 0 && x < width && y < height) return greyOf(data, y * width + x)
  }
  return Number.NaN
}

/**
 * The grey value at a place, between the middles of four pixels (bilinear); not a number where there are none.
 * @param x and y: pixels of the scan
 */
export function greyAt(picture: GreyPicture, x: number, y: number): number {
  const [u, v] = [x - 0.5, y - 0.5]
  const [i, j] = [Math.floor(u), Math.floor(v)]
  const [f, g] = [u - i, v - j]
  const along = (row: number): number =>
    greyOfPixel(picture, i, row) * (1 - f) + greyOfPixel(picture, i + 1, row) * f
  return along(j) * (1 - g) + along(j + 1) * g
}
