import { type GreyPicture, type GreyWindow, windowsOf } from '../../imaging/index.ts'

/** A rectangle of a page, turned. */
export interface TurnedBox {
  /** Pixels of the page; a whole number is where two pixels meet. */
  readonly centre: readonly [number, number]
  /** Along the lettering and across it, pixels of the page. */
  readonly width: number
  readonly height: number
  /** Degrees clockwise on the page from level to its lower edge: −90 is read from the right. */
  readonly angle: number
}

/** Grey of an upright rectangle, row by row. */
export interface Upright {
  readonly width: number
  readonly height: number
  readonly grey: Float32Array
}

/** More samples a pixel do not make it better that can be told. */
const MOST_SAMPLES = 6

/**
 * Cuts a turned rectangle out of a scan and sets it upright, at a scale: averaged where it becomes smaller, interpolated
 * between four pixels where it becomes larger. What lies outside of the windows goes on as the edge of the nearest.
 * @param scale pixels of what comes back to a pixel of the page, above 0
 */
export function sampleUpright(picture: GreyPicture, box: TurnedBox, scale: number): Upright {
  const width = Math.max(1, Math.round(box.width * scale))
  const height = Math.max(1, Math.round(box.height * scale))
  const turn = (box.angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn) / scale, Math.sin(turn) / scale]
  const samples = Math.min(MOST_SAMPLES, Math.max(1, Math.round(1 / scale)))
  const windows = windowsOf(picture)
  const grey = new Float32Array(width * height)
  let piece = windows[0]
  if (piece === undefined) return { width, height, grey }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0
      for (let j = 0; j < samples; j++)
        for (let i = 0; i < samples; i++) {
          const u = x + (i + 0.5) / samples - width / 2
          const v = y + (j + 0.5) / samples - height / 2
          const px = box.centre[0] + u * c - v * s
          const py = box.centre[1] + u * s + v * c
          if (windows.length > 1 && outside(piece, px, py) > 0) piece = nearest(windows, piece, px, py)
          sum += greyBetween(piece, px - piece.left - 0.5, py - piece.top - 0.5)
        }
      grey[y * width + x] = sum / samples ** 2
    }
  return { width, height, grey }
}

/** How far a place is from a window, pixels; 0 inside. */
function outside({ left, top, width, height }: GreyWindow, x: number, y: number): number {
  return Math.max(left - x, x - left - width, top - y, y - top - height, 0)
}

function nearest(windows: readonly GreyWindow[], first: GreyWindow, x: number, y: number): GreyWindow {
  let best = first
  for (const one of windows) if (outside(one, x, y) < outside(best, x, y)) best = one
  return best
}

/** Between four pixels; beyond the edge, the edge's. x, y from the centre of the first pixel. */
function greyBetween({ width, height, data }: GreyWindow, x: number, y: number): number {
  const cx = Math.min(width - 1, Math.max(0, x))
  const cy = Math.min(height - 1, Math.max(0, y))
  const [x0, y0] = [Math.floor(cx), Math.floor(cy)]
  const x1 = Math.min(width - 1, x0 + 1)
  const [above, below] = [y0 * width, Math.min(height - 1, y0 + 1) * width]
  const [fx, fy] = [cx - x0, cy - y0]
  const upper = (data[above + x0] ?? 0) * (1 - fx) + (data[above + x1] ?? 0) * fx
  const lower = (data[below + x0] ?? 0) * (1 - fx) + (data[below + x1] ?? 0) * fx
  return upper * (1 - fy) + lower * fy
}
