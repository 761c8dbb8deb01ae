import type { GreyPicture } from '../../imaging/index.ts'
import { type UprightWay, uprightWays } from '../upright/upright-ways.ts'
import type { BoxToRead } from './box-to-read.ts'

/** Height of a box of one row, or of a stacked fraction, in heights of a full digit: between the two. */
const BOX_HEIGHT = 1.7
/** A box has no more rows of full digits than so many: each row of a call-out may hold a stacked fraction. */
const MOST_ROWS = 6
/** Nobody drags a box so many digits higher and wider than a figure, nor are digits read of fewer pixels than these. */
const [LOOSE, SMALLEST] = [10, 5]

/** The ways a box may be read in, likeliest first; digits that would be far too small for it are none. */
export function waysOf(picture: GreyPicture, box: BoxToRead): readonly UprightWay[] {
  if (box.angle !== undefined) return [asGiven(box, box.angle)]
  return uprightWays(picture, box).map((way) => {
    const least = Math.max(way.box.height / MOST_ROWS, Math.min(box.width, box.height) / LOOSE, SMALLEST)
    const digitHeights = way.digitHeights.map((high) => Math.max(high, least))
    return { ...way, digitHeights }
  })
}

/** The way that is known. Whether the box holds one row or a fraction is not, unless the height of its digits is given. */
function asGiven(
  { x, y, width, height, digitHeight = height / BOX_HEIGHT }: BoxToRead,
  angle: number,
): UprightWay {
  const centre = [x + width / 2, y + height / 2] as const
  return { box: { centre, width, height, angle }, digitHeights: [digitHeight], weight: 1 }
}
