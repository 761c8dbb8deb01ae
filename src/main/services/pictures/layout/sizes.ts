import type { PixelSize } from '../../scans/page/pixel-size.ts'

/** The longest sides of the pictures that show a sheet whole, pixels. */
export const OVERVIEW_SIDE = 2048
export const THUMBNAIL_SIDE = 360
export const GROUND_SIDE = 192

/** A size brought down so that its longer side is at most `side`; never enlarged. */
export function within({ width, height }: PixelSize, side: number): PixelSize {
  const scale = Math.min(1, side / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) }
}
