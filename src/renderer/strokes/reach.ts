import type { SheetPictures } from '../../contract/pictures.ts'

/** A stroke so near to the pointer is meant by it, CSS pixels. */
const NEAR = 8
/** Pixels of what is looked at: less would miss what a hand means close to, more is guessing. */
export const LEAST_REACH = 4
export const MOST_REACH = 16

/**
 * How far from where it was pointed at a stroke is looked for, pixels of the scan; null where that would be guessing:
 * before the sheet is seen as it is. From far off it is more than can be looked over in the scan as it is.
 * @param zoom CSS pixels of the screen for each pixel of the scan
 */
export function strokeReach(zoom: number, pictures: SheetPictures | undefined): number | null {
  if (pictures === undefined) return null
  const { state } = pictures.progress
  if (state === 'ready') return Math.max(LEAST_REACH, NEAR / zoom)
  const coarseness = pictures.width / pictures.overview.width
  const reach = Math.max(LEAST_REACH, NEAR / zoom, 2 * coarseness)
  return reach > MOST_REACH ? null : reach
}

/**
 * The level of the pictures at which a reach is no more than can be looked over: about as coarse as the sheet is seen from
 * there. 0 is the scan as it is; null where there is no level so coarse.
 * @param reach pixels of the scan
 */
export function levelOfReach(reach: number, { levels }: SheetPictures): number | null {
  const level = Math.max(0, Math.ceil(Math.log2(reach / MOST_REACH)))
  return level < levels.length ? level : null
}
