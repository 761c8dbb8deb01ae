import type { Pixel } from '../geometry/frames.ts'
import { reason } from '../words/core-words.ts'
import { isReason, searchContext } from './detect/detector.ts'
import { roundEndAt } from './detect/round-end-detector.ts'
import { findCircle } from './find-circle.ts'
import { noStroke } from './result/stroke-result.ts'
import type { NoStroke, RoundOptions, StrokeCircle } from './result/stroke-types.ts'
import type { GreyPicture } from './window/grey-picture.ts'
import { oneWindow } from './window/one-window.ts'

/** The three places that are seen on an end lie within so much of its stroke, pixels. */
const SEEN_WITHIN = 4

/**
 * The round end of a slot near one place: the half circle that joins two straight sides.
 * @param grey of the scan, all that `searchWindow` says of an end with nothing left out; at: pixels of the scan, within `reach` (8 px) of the
 * stroke of the end, anywhere on it. Its radius is 5 px at the least and at the most what `searchWindow` has room for.
 * @returns its arc as `findCircle` finds it, without what lies next to the straight sides; or why there is none
 */
export function findRoundEnd(
  grey: GreyPicture,
  at: Pixel,
  { reach, reading, ink }: Omit<RoundOptions, 'whole'> = {},
): StrokeCircle | NoStroke {
  const window = oneWindow(grey)
  if (window === null) return noStroke(reason('stroke.no-round-end'))
  const three = roundEndAt(searchContext(window, { reach, ink }), window, at)
  if (isReason(three)) return noStroke(three)
  return findCircle(grey, [...three], { reach: SEEN_WITHIN, reading, ink, whole: false })
}
