import type { GreyWindow } from '../window/grey-window.ts'
import { type ColumnRange, PER_PIXEL } from './bar-filter.ts'
import { columnsFor, emptyMeans, mapOf, type PieceMap } from './piece-map.ts'

/**
 * A map of pieces along a straight way by a place, without a strip: many directions are looked at.
 * @param from along the way from the foot of the place, pixels; count pieces of this size; half: how far across;
 * most: only every whole pixel to this far across is filled in, for each width
 * @param before a map of the same measures that is no longer needed: its memory is used again
 */
export function orientedFilter(
  grey: GreyWindow,
  at: readonly [number, number],
  direction: number,
  from: number,
  count: number,
  size: number,
  half: number,
  widest: number,
  most: number | ((width: number) => number),
  before?: PieceMap,
): PieceMap {
  const columns = columnsFor(-half, half)
  const means = emptyMeans(count, columns)
  const dx = Math.cos(direction)
  const dy = Math.sin(direction)
  const to = from + count * size
  const cx = at[0] - grey.left - 0.5
  const cy = at[1] - grey.top - 0.5
  const perPixel = 1 / size
  const seen = new Int32Array(count)
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
      means.total[i] = (means.total[i] as number) + (grey.data[y * grey.width + x] as number)
      means.count[i] = (means.count[i] as number) + 1
      seen[k] = (seen[k] as number) + 1
    }
  }
  const there = Array.from(seen, (n) => n > size * half)
  const centre = Math.round(half * PER_PIXEL)
  const spanOf = (width: number): ColumnRange => {
    const far = (typeof most === 'number' ? most : most(width)) * PER_PIXEL
    return { first: centre - far, last: centre + far, step: PER_PIXEL }
  }
  return mapOf(means, there, -half, columns, widest, before?.bars, spanOf)
}

/** From where to where low ≤ slope·x ≤ high. */
function within(low: number, high: number, slope: number): [number, number] {
  if (Math.abs(slope) < 1e-9) return low <= 0 && high >= 0 ? [-1e9, 1e9] : [1, -1]
  return slope > 0 ? [low / slope, high / slope] : [high / slope, low / slope]
}
