import * as elements from '../../linear-algebra/elements-unchecked.ts'
import type { GreyWindow } from './grey-window.ts'

const { grey: greyOf } = elements

/**
 * The grey value at a place, between the middles of four pixels (bilinear); not a number where there are none.
 * @param x and y: pixels of the scan
 */
export function greyAt({ left, top, width, height, data }: GreyWindow, x: number, y: number): number {
  const [u, v] = [x - left - 0.5, y - top - 0.5]
  const [i, j] = [Math.floor(u), Math.floor(v)]
  if (i < 0 || j < 0 || i + 1 >= width || j + 1 >= height) return Number.NaN
  const [f, g] = [u - i, v - j]
  const k = j * width + i
  return (
    (greyOf(data, k) * (1 - f) + greyOf(data, k + 1) * f) * (1 - g) +
    (greyOf(data, k + width) * (1 - f) + greyOf(data, k + width + 1) * f) * g
  )
}
