import type { SheetPictures } from '../../contract/pictures.ts'

/** A stroke so near to the pointer is meant by it, CSS pixels. */
const NEAR = 8
/** Pixels of the scan: less would miss what a hand means close to, more is guessing. */
const LEAST = 4
const MOST = 16

/**
 * How far from where it was pointed at a stroke is looked for, pixels of the scan; null where that would be guessing:
 * too far off, or before the sheet is seen as it is.
 * @param zoom CSS pixels of the screen for each pixel of the scan
 */
export function strokeReach(zoom: number, pictures: SheetPictures | undefined): number | null {
  if (pictures === undefined) return null
  const { state } = pictures.progress
  const coarseness = state === 'ready' ? 1 : pictures.width / pictures.overview.width
  const reach = Math.max(LEAST, NEAR / zoom, 2 * coarseness)
  return reach > MOST ? null : reach
}
