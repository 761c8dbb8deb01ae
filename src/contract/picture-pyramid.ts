import type { PyramidLevel } from './pictures.ts'

/** Tiles are squares of this many pixels, less at the right and lower edges. */
export const TILE = 512

/** The steps of the pyramid of a scan, from full size down to one tile. */
export function pyramidLevels(width: number, height: number): PyramidLevel[] {
  const levels: PyramidLevel[] = []
  for (let level = 0; ; level++) {
    const w = Math.max(1, Math.ceil(width / 2 ** level))
    const h = Math.max(1, Math.ceil(height / 2 ** level))
    levels.push({ level, width: w, height: h, columns: Math.ceil(w / TILE), rows: Math.ceil(h / TILE) })
    if (w <= TILE && h <= TILE) return levels
  }
}
