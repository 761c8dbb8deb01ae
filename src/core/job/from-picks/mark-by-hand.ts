import { type Pixel, pixel } from '../../geometry/frames.ts'
import { reason } from '../../words/core-words.ts'
import { FEWEST_PICKS, type MarkNeed } from '../model/mark-needs.ts'
import { type PicksRefused, toThousandth, type UnnamedMark } from './picked-mark.ts'

/** Pixels. Common practice, no source: a careful pick by hand on an enlarged scan is good to about a pixel. */
export const HAND_SIGMA = 1

/**
 * A mark exactly where it was picked, as good as the worst of its picks.
 * @param sigmas standard uncertainty of each pick, pixels
 */
export function markByHand(
  need: MarkNeed,
  picks: readonly Pixel[],
  sigmas: readonly number[],
): UnnamedMark | PicksRefused {
  const least = FEWEST_PICKS[need]
  const pixels = picks.map(([x, y]) => pixel(toThousandth(x), toThousandth(y)))
  const [first] = pixels
  if (first === undefined || pixels.length < least) {
    return { refused: reason('mark.too-few-picks', { name: need, least, given: pixels.length }) }
  }
  const base = { how: 'hand' as const, sigma: Math.round(Math.max(...sigmas) * 10) / 10 }
  switch (need) {
    case 'point':
      return { ...base, kind: 'point', pixel: first }
    case 'line':
    case 'circle':
    case 'path':
      return { ...base, kind: need, pixels }
    case 'closed path':
      return { ...base, kind: 'path', pixels, closed: true }
  }
}
