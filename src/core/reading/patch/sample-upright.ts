import type { GreyWindow } from '../../imaging/window/grey-window.ts'

/** A rectangle of a page, turned. */
export interface TurnedBox {
  /** Pixels of the page. */
  readonly centre: readonly [number, number]
  readonly width: number
  readonly height: number
  /** Degrees clockwise on the page from level to its lower edge. */
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
 * where it becomes larger. What lies outside of the window goes on as its edge.
 * @param scale pixels of what comes back to a pixel of the page
 */
export function sampleUpright(picture: GreyWindow, box: TurnedBox, scale: number): Upright {
  const width = Math.max(1, Math.round(box.width * scale))
  const height = Math.max(1, Math.round(box.height * scale))
  const turn = (box.angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn) / scale, Math.sin(turn) / scale]
  const samples = Math.min(MOST_SAMPLES, Math.max(1, Math.round(1 / scale)))
  const grey = new Float32Array(width * height)
  const left = box.centre[0] - picture.left
  const top = box.centre[1] - picture.top
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0
      for (let j = 0; j < samples; j++)
        for (let i = 0; i < samples; i++) {
          const u = x + (i + 0.5) / samples - width / 2
          const v = y + (j + 0.5) / samples - height / 2
          sum += greyAt(picture, left + u * c - v * s - 0.5, top + u * s + v * c - 0.5)
        }
      grey[y * width + x] = sum / samples ** 2
    }
  return { width, height, grey }
}

/** Between four pixels; beyond the edge, the edge's. x, y from the centre of the first pixel. */
function greyAt({ width, height, data }: GreyWindow, x: number, y: number): number {
  const cx = Math.min(width - 1, Math.max(0, x))
  const cy = Math.min(height - 1, Math.max(0, y))
  const [x0, y0] = [Math.floor(cx), Math.floor(cy)]
  const [x1, y1] = [Math.min(width - 1, x0 + 1), Math.min(height - 1, y0 + 1)]
  const [fx, fy] = [cx - x0, cy - y0]
  const at = (px: number, py: number): number => data[py * width + px] ?? 0
  return (
    (at(x0, y0) * (1 - fx) + at(x1, y0) * fx) * (1 - fy) + (at(x0, y1) * (1 - fx) + at(x1, y1) * fx) * fy
  )
}
