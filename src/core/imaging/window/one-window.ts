import { type GreyPicture, windowsOf } from './grey-picture.ts'
import type { GreyWindow } from './grey-window.ts'

/** A picture as the one window that its windows fill side by side; null where they leave something out. */
export function oneWindow(picture: GreyPicture): GreyWindow | null {
  const windows = windowsOf(picture)
  const [first, ...more] = windows
  if (first === undefined) return null
  if (more.length === 0) return first
  const left = Math.min(...windows.map((one) => one.left))
  const top = Math.min(...windows.map((one) => one.top))
  const width = Math.max(...windows.map((one) => one.left + one.width)) - left
  const height = Math.max(...windows.map((one) => one.top + one.height)) - top
  // Windows of a picture share no pixel.
  if (windows.reduce((sum, one) => sum + one.width * one.height, 0) < width * height) return null
  const data = new Uint8Array(width * height)
  for (const one of windows) {
    for (let y = 0; y < one.height; y++) {
      const row = one.data.subarray(y * one.width, (y + 1) * one.width)
      data.set(row, (one.top - top + y) * width + one.left - left)
    }
  }
  return { left, top, width, height, data }
}
