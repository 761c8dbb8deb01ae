import type { Pixel } from '../../geometry/frames.ts'
import * as elements from '../../linear-algebra/elements-unchecked.ts'
import { type GreyPicture, windowsOf } from '../window/grey-picture.ts'
import type { GreyWindow } from '../window/grey-window.ts'
import { type ColumnRange, type GreyMeans, PER_PIXEL } from './bar-filter.ts'
import { type BarGrid, columnsFor, emptyGrid, emptyMeans, fillGrid } from './bar-grid.ts'

const { f64, grey: greyOf, i32, u16 } = elements

/** What straight ways by a place are looked at, pixels. */
export interface OrientedWays {
  /** From where along the way, from the foot of the place. */
  from: number
  /** Pieces of this size. */
  count: number
  size: number
  /** How far across; and for bars of each width every whole pixel to so far. */
  half: number
  mostOf: (width: number) => number
  widest: number
}

/** Bars along straight ways by places of a picture, without a strip for each, for many directions are looked at. */
export class OrientedFilter {
  readonly #windows: readonly GreyWindow[]
  readonly #ways: OrientedWays
  readonly #means: GreyMeans
  readonly #grid: BarGrid

  constructor(grey: GreyPicture, ways: OrientedWays) {
    const columns = columnsFor(-ways.half, ways.half)
    this.#windows = windowsOf(grey)
    this.#ways = ways
    this.#means = emptyMeans(ways.count, columns)
    this.#grid = emptyGrid(ways.count, -ways.half, columns, ways.widest)
  }

  /** @returns the filter's own grid, filled in for this way until the next one is looked at. @param direction radians */
  along(at: Pixel, direction: number): BarGrid {
    const { half, mostOf } = this.#ways
    const grid = this.#grid
    this.#sumGreys(at, direction)
    const centre = Math.round(half * PER_PIXEL)
    fillGrid(grid, this.#means, (width): ColumnRange => {
      const far = mostOf(width) * PER_PIXEL
      return { first: centre - far, last: centre + far, step: PER_PIXEL }
    })
    return grid
  }

  #sumGreys(at: Pixel, direction: number): void {
    const { count, size, half } = this.#ways
    const { total, count: counts } = this.#means
    total.fill(0)
    counts.fill(0)
    const seen = new Int32Array(count)
    for (const window of this.#windows) this.#addGreys(window, at, direction, seen)
    this.#grid.there = Array.from(seen, (n) => n > size * half)
  }

  /** Adds those of one window. @param seen receives how many pixels each piece has */
  #addGreys(grey: GreyWindow, at: Pixel, direction: number, seen: Int32Array): void {
    const { from, count, size, half } = this.#ways
    const { columns } = this.#grid
    const { total, count: counts } = this.#means
    const dx = Math.cos(direction)
    const dy = Math.sin(direction)
    const to = from + count * size
    const cx = at[0] - grey.left - 0.5
    const cy = at[1] - grey.top - 0.5
    const perPixel = 1 / size
    const middle = (from + to) / 2
    const high = (Math.abs(dy) * (to - from)) / 2 + Math.abs(dx) * half
    const y0 = Math.max(0, Math.ceil(cy + middle * dy - high))
    const y1 = Math.min(grey.height - 1, Math.floor(cy + middle * dy + high))
    for (let y = y0; y <= y1; y++) {
      const sy = (y - cy) * dy
      const ty = (y - cy) * dx
      const [sa, sb] = within(from - sy, to - sy, dx)
      const [ta, tb] = within(-half - ty, half - ty, -dy)
      const x0 = Math.max(0, Math.ceil(cx + Math.max(sa, ta)))
      const x1 = Math.min(grey.width - 1, Math.floor(cx + Math.min(sb, tb)))
      for (let x = x0; x <= x1; x++) {
        const along = ((x - cx) * dx + sy - from) * perPixel
        const across = (ty - (x - cx) * dy + half) * PER_PIXEL
        if (!(along >= 0 && across >= 0)) continue
        const k = along | 0
        const bin = across | 0
        if (k >= count || bin >= columns) continue
        const i = k * columns + bin
        total[i] = f64(total, i) + greyOf(grey.data, y * grey.width + x)
        counts[i] = u16(counts, i) + 1
        seen[k] = i32(seen, k) + 1
      }
    }
  }
}

/** From where to where low ≤ slope·x ≤ high. */
function within(low: number, high: number, slope: number): [number, number] {
  if (Math.abs(slope) < 1e-9) return low <= 0 && high >= 0 ? [-1e9, 1e9] : [1, -1]
  return slope > 0 ? [low / slope, high / slope] : [high / slope, low / slope]
}
