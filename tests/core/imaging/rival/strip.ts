import type { Pixel } from '../../../../src/core/geometry/frames.ts'
import type { GreyWindow } from '../../../../src/core/imaging/index.ts'
import type { OpenCv } from './open-cv.ts'

/** The scan along a way, straightened: a column for each pixel of the way, rows from −half to +half across it. */
export interface Strip {
  columns: number
  half: number
  values: Float32Array
  /** The place in the scan of a column and a distance across. */
  place: (column: number, across: number) => Pixel
  /** Grey value that parts ink from ground, by Otsu's method. */
  threshold: number
}

export function stripOf(
  cv: OpenCv,
  window: GreyWindow,
  columns: number,
  half: number,
  place: Strip['place'],
): Strip {
  const rows = 2 * half + 1
  const x = new Float32Array(rows * columns)
  const y = new Float32Array(rows * columns)
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [px, py] = place(column, row - half)
      // OpenCV counts from the centre of the first pixel.
      x[row * columns + column] = px - 0.5
      y[row * columns + column] = py - 0.5
    }
  }
  const from = cv.matFromArray(window.height, window.width, cv.CV_32FC1, window.data)
  const mapX = cv.matFromArray(rows, columns, cv.CV_32FC1, x)
  const mapY = cv.matFromArray(rows, columns, cv.CV_32FC1, y)
  const to = new cv.Mat()
  cv.remap(from, to, mapX, mapY, cv.INTER_LINEAR, cv.BORDER_REPLICATE)
  const values = Float32Array.from(to.data32F)
  const bytes = cv.matFromArray(rows, columns, cv.CV_8UC1, Uint8Array.from(values))
  const black = new cv.Mat()
  const threshold = cv.threshold(bytes, black, 0, 255, cv.THRESH_OTSU)
  for (const mat of [from, mapX, mapY, to, bytes, black]) mat.delete()
  return { columns, half, values, place, threshold }
}
