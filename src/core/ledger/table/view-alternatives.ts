import type { Calibration } from '../../calibration/calibrate.ts'
import type { Alternative } from '../../calibration/explanations.ts'
import { isLength, uncertainStretch } from '../../calibration/stretch.ts'
import type { Sheet } from '../../job/model/types.ts'
import type { ViewMapping } from '../../mapping/view-mapping.ts'
import { expand } from '../../uncertainty/coverage.ts'
import type { Uncertain } from '../../uncertainty/uncertain.ts'
import { inWords, reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'
import { isSeldom, paperOf } from '../views/paper.ts'
import type { TableAlternative } from './table.ts'

/**
 * What may be wrong in a view where nothing decides, one beside the other: which figured sizes each leaves out, the scales
 * that the rest come to, and what that changes.
 * @param factor from mm to the unit of the table
 */
export function alternativeRows(
  { alternatives, theta, view, used }: Calibration,
  sheet: Sheet | undefined,
  factor: number,
  named: (reason: AnyReason) => AnyReason,
): TableAlternative[] {
  const now = scales(view, theta)
  // What was lent by others, or by what paper does, is no finding of the rest.
  const ofItsOwn = used.every(isLength)
  return alternatives.map((alternative) => {
    const then = scales(view, alternative.theta)
    const saysReason = named(
      reason('misfit.alternative', {
        leftOut: alternative.leftOut.map((id) => ({ id })),
        along: then.along / now.along - 1,
        across: then.across / now.across - 1,
        stretch: ofItsOwn ? stretchBy(view, alternative, sheet) : null,
      }),
    )
    return {
      leftOut: [...alternative.leftOut],
      along: then.along * factor,
      across: then.across * factor,
      longerAlong: then.along / now.along - 1,
      longerAcross: then.across / now.across - 1,
      p: alternative.p,
      says: inWords(saysReason),
      saysReason,
    }
  })
}

/** mm a pixel along the sheet and across it, in the middle of the figured sizes. */
function scales(
  { mapping, frame }: ViewMapping,
  theta: readonly Uncertain[],
): { along: number; across: number } {
  const [xx, xy, yx, yy] = mapping.apply(
    theta.map((t) => t.value),
    frame.origin,
    frame,
  ).byPixel
  const [c, s] = [Math.cos(frame.grain), Math.sin(frame.grain)]
  return {
    along: Math.hypot(xx * c + xy * s, yx * c + yy * s),
    across: Math.hypot(xy * c - xx * s, yy * c - yx * s),
  }
}

/** How the paper would be stretched; null where the mapping has one scale, or a skewed or tilted sheet. */
function stretchBy(
  { mapping }: ViewMapping,
  { theta }: Alternative,
  sheet: Sheet | undefined,
): { value: number; U: number; seldom: boolean } | null {
  if (mapping.kind !== 'two-axis' || sheet === undefined) return null
  const stretch = uncertainStretch(mapping, theta)
  const { u, U } = expand(stretch)
  return { value: stretch.value, U, seldom: isSeldom(stretch.value, u, paperOf(sheet)) }
}
