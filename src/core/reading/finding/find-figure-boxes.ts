import type { GreyWindow } from '../../imaging/index.ts'

/** A box that may hold a figure, in pixels of the picture's page. */
export interface FoundBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly angle: number
}

/** Darker than this share of the way from black to the paper is ink. */
const INK = 0.6
/** Sides of a glyph, pixels. */
const [SMALLEST, LARGEST] = [6, 60]

/** Where there may be figures in a picture: level rows of dark spots as large as glyphs. */
export function findFigureBoxes({ left, top, width, height, data }: GreyWindow): FoundBox[] {
  const paper = [...data.filter((_, i) => i % 97 === 0)].sort((a, b) => a - b).at(-1) ?? 255
  const seen = new Uint8Array(width * height)
  const spots: { x0: number; y0: number; x1: number; y1: number }[] = []
  const stack: number[] = []
  for (let start = 0; start < seen.length; start++) {
    if (seen[start] === 1 || (data[start] ?? 255) > INK * paper) continue
    const spot = { x0: width, y0: height, x1: 0, y1: 0 }
    seen[start] = 1
    stack.push(start)
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      const [x, y] = [at % width, Math.floor(at / width)]
      spot.x0 = Math.min(spot.x0, x)
      spot.x1 = Math.max(spot.x1, x + 1)
      spot.y0 = Math.min(spot.y0, y)
      spot.y1 = Math.max(spot.y1, y + 1)
      for (const next of [x > 0 ? at - 1 : at, x < width - 1 ? at + 1 : at, at - width, at + width]) {
        if (next < 0 || next >= seen.length || seen[next] === 1 || (data[next] ?? 255) > INK * paper) continue
        seen[next] = 1
        stack.push(next)
      }
    }
    const [w, h] = [spot.x1 - spot.x0, spot.y1 - spot.y0]
    if (h >= SMALLEST && h <= LARGEST && w <= LARGEST) spots.push(spot)
  }
  spots.sort((a, b) => a.x0 - b.x0)
  const rows: typeof spots = []
  for (const spot of spots) {
    const high = spot.y1 - spot.y0
    const row = rows.find(
      (one) => spot.x0 - one.x1 < high && spot.y0 < one.y1 && spot.y1 > one.y0 && one.y1 - one.y0 < 3 * high,
    )
    if (row === undefined) rows.push({ ...spot })
    else {
      row.x1 = Math.max(row.x1, spot.x1)
      row.y0 = Math.min(row.y0, spot.y0)
      row.y1 = Math.max(row.y1, spot.y1)
    }
  }
  return rows.map(({ x0, y0, x1, y1 }) => ({
    x: left + x0,
    y: top + y0,
    width: x1 - x0,
    height: y1 - y0,
    angle: 0,
  }))
}
