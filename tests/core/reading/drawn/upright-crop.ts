import type { FigureFrame } from './draw-figure.ts'
import type { DrawnGrey } from './grey.ts'

/** What lies outside a picture is as its nearest pixel. */
function pixelAt({ width, height, pixels }: DrawnGrey, x: number, y: number): number {
  const column = Math.min(width - 1, Math.max(0, x))
  const row = Math.min(height - 1, Math.max(0, y))
  return pixels[row * width + column] ?? 0
}

/**
 * A frame of a picture turned level, with a margin round it (pixels of the picture), `scale` times as large. Between pixels
 * values are taken linearly.
 */
export function uprightCrop(grey: DrawnGrey, frame: FigureFrame, margin: number, scale: number): DrawnGrey {
  const width = Math.max(1, Math.round((frame.width + 2 * margin) * scale))
  const height = Math.max(1, Math.round((frame.height + 2 * margin) * scale))
  const turn = (frame.angle * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const pixels = new Uint8Array(width * height)
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const u = (column + 0.5 - width / 2) / scale
      const v = (row + 0.5 - height / 2) / scale
      const x = frame.centre[0] + u * cos - v * sin - 0.5
      const y = frame.centre[1] + u * sin + v * cos - 0.5
      const [i, j] = [Math.floor(x), Math.floor(y)]
      const [s, t] = [x - i, y - j]
      const above = pixelAt(grey, i, j) * (1 - s) + pixelAt(grey, i + 1, j) * s
      const below = pixelAt(grey, i, j + 1) * (1 - s) + pixelAt(grey, i + 1, j + 1) * s
      pixels[row * width + column] = Math.round(above * (1 - t) + below * t)
    }
  }
  return { width, height, pixels }
}
