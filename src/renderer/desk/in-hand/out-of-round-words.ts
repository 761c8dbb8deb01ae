import { radians, toDegrees } from '../../../core/geometry/angle-units.ts'
import type { Pixel } from '../../../core/geometry/frames.ts'
import { outOfRound } from '../../../core/imaging/index.ts'
import type { FoundOn } from '../../../core/job/model/types.ts'
import { pixelsInWords } from '../../strokes/uncertainty-words.ts'

/**
 * What is to be said of a whole circle that is clearly an ellipse, a sentence; empty for what is round or no whole circle.
 * @param pixels centres of the profiles that were kept
 */
export function outOfRoundInWords(as: FoundOn['as'], pixels: readonly Pixel[]): string {
  if (as !== 'circle') return ''
  const oval = outOfRound(pixels)
  if (oval === null) return ''
  const up = Math.round(-toDegrees(radians(oval.longest)))
  const way = up === 0 ? 'level' : `${Math.abs(up)}° ${up > 0 ? 'up' : 'down'} to the right`
  return (
    `It is out of round by ${pixelsInWords(oval.by)}, longest ${way}: paper that has shrunk more one way makes it so, or the hand that ` +
    'drew it. A view whose scale is taken both ways allows for the paper.'
  )
}
