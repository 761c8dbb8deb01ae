import type { PixelSize } from '../../scans/page/pixel-size.ts'

/** A grey picture, one byte a pixel, row by row. */
export interface Grey extends PixelSize {
  data: Uint8Array
}

/** Of the pixels of a cell, this share is darker than the paper there: ink, and noise brighter than paper stays out. */
const PAPER_QUANTILE = 0.9

/** Cells to each side: a solid black no wider than this is bridged by the paper round it. */
const REACH = 2

/** Passes of a box three cells wide: together about a Gaussian. */
const SMOOTHINGS = 3

/**
 * The paper of a sheet without what is drawn on it: the brightest nearby value, smoothed. Dividing the sheet by it
 * lifts stains, folds and uneven light.
 * @param grey the sheet whole, no smaller than `size`
 */
export function groundOf(grey: Grey, size: PixelSize): Grey {
  const cells = { ...size, data: paperOfCells(grey, size) }
  let ground = alongBoth(cells, REACH, (values) => Math.max(...values))
  for (let pass = 0; pass < SMOOTHINGS; pass++) ground = alongBoth(ground, 1, mean)
  return ground
}

const mean = (values: readonly number[]): number =>
  Math.round(values.reduce((sum, value) => sum + value, 0) / values.length)

function paperOfCells(grey: Grey, { width, height }: PixelSize): Uint8Array {
  const paper = new Uint8Array(width * height)
  const counts = new Uint32Array(256)
  for (let row = 0; row < height; row++) {
    const [top, bottom] = span(row, height, grey.height)
    for (let column = 0; column < width; column++) {
      const [left, right] = span(column, width, grey.width)
      counts.fill(0)
      for (let y = top; y < bottom; y++) {
        for (let x = left; x < right; x++) {
          const value = grey.data[y * grey.width + x] ?? 0
          counts[value] = (counts[value] ?? 0) + 1
        }
      }
      paper[row * width + column] = quantile(counts, (bottom - top) * (right - left))
    }
  }
  return paper
}

/** The pixels that a cell covers, at least one. */
const span = (cell: number, cells: number, pixels: number): [from: number, to: number] => {
  const from = Math.floor((cell * pixels) / cells)
  return [from, Math.max(from + 1, Math.floor(((cell + 1) * pixels) / cells))]
}

function quantile(counts: Uint32Array, total: number): number {
  let above = Math.floor(total * (1 - PAPER_QUANTILE))
  for (let value = 255; value > 0; value--) {
    above -= counts[value] ?? 0
    if (above < 0) return value
  }
  return 0
}

/** Each value made one with its neighbours along its row, then along its column; the edge has fewer of them. */
function alongBoth(grey: Grey, reach: number, join: (values: readonly number[]) => number): Grey {
  return along(along(grey, reach, join, 'row'), reach, join, 'column')
}

function along(
  { data, width, height }: Grey,
  reach: number,
  join: (values: readonly number[]) => number,
  way: 'row' | 'column',
): Grey {
  const joined = new Uint8Array(data.length)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const values: number[] = []
      for (let step = -reach; step <= reach; step++) {
        const [nx, ny] = way === 'row' ? [x + step, y] : [x, y + step]
        if (nx >= 0 && ny >= 0 && nx < width && ny < height) values.push(data[ny * width + nx] ?? 0)
      }
      joined[y * width + x] = join(values)
    }
  }
  return { data: joined, width, height }
}
