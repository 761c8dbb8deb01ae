import type { SheetPictures } from '../../contract/pictures.ts'
import { HAND_SIGMA } from '../../core/job/from-picks/mark-by-hand.ts'
import type { Mark } from '../../core/job/model/types.ts'

/** How sure a pick would be. */
export interface PickQuality {
  how: Mark['how']
  /** Standard uncertainty of each coordinate, pixels of the scan. */
  sigma: number
}

/**
 * What a pick by hand would be worth. No hand is surer than a pixel of what it sees: of the screen for the pointer,
 * which moves in such steps, or of the picture that is shown before the sheet is there in full. The cross is moved by
 * keys and watched through the lens. Common practice, no source.
 * @param zoom CSS pixels of the screen for each pixel of the scan
 * @param pictures what can be shown of the sheet; undefined: nothing yet, and nothing is known to be coarse
 */
export function pickQuality(
  by: 'pointer' | 'cross',
  zoom: number,
  pictures: SheetPictures | undefined,
): PickQuality {
  const step = by === 'pointer' ? 1 / zoom : 0
  const whole = pictures === undefined || pictures.progress.state === 'ready'
  const coarseness = whole ? 0 : pictures.width / pictures.overview.width
  return { how: 'hand', sigma: Math.max(HAND_SIGMA, step, coarseness) }
}
