import { heightOfMost } from '../glyphs/height-of-most.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { slopeOfRows } from '../layout/slope-of-rows.ts'
import { BEST_HEIGHT } from '../network/best-height.ts'
import type { UprightWay } from '../upright/upright-ways.ts'
import { massOf } from './glyph-mass.ts'
import type { BoxLook } from './look.ts'
import type { BoxView } from './view-of-box.ts'

/** The network knows heights well between these shares of the best. */
const [LEAST, MOST] = [0.82, 1.18]
/** Rows that run so far off the box's turn are looked at once more along them, degrees. */
const LEVEL = 1.2

/**
 * A way looked at again at the scale that its digits ask for, and along its rows.
 * @param around how much is looked at round the box, pixels of the page
 */
export function refinedLook(first: BoxLook, way: UprightWay, see: BoxView, around: number): BoxLook {
  return levelled(atGoodHeight(first, way, see, around), see)
}

/** Looks once more where the digits are not of the height that the network knows best. */
function atGoodHeight(
  first: BoxLook,
  { box, digitHeights }: UprightWay,
  see: BoxView,
  around: number,
): BoxLook {
  const look = (height: number): BoxLook => see(box, BEST_HEIGHT / height, around)
  let best = first
  for (const height of digitHeights.slice(1)) {
    if (isOfGoodHeight(best)) break
    const other = look(height)
    if (massOf(other.glyphs) > massOf(best.glyphs)) best = other
  }
  const height = heightOf(best.glyphs)
  if (height === null || isOfGoodHeight(best)) return best
  const again = look(height / best.scale)
  return massOf(again.glyphs) > 0.9 * massOf(best.glyphs) ? again : best
}

function isOfGoodHeight({ glyphs }: BoxLook): boolean {
  const height = heightOf(glyphs)
  return height !== null && height > LEAST * BEST_HEIGHT && height < MOST * BEST_HEIGHT
}

/** Looks once more, along the rows, where these do not run as the box was turned. */
function levelled(first: BoxLook, see: BoxView): BoxLook {
  const off = (Math.atan(slopeOfRows(first.glyphs)) * 180) / Math.PI
  if (Math.abs(off) < LEVEL) return first
  const again = see({ ...first.box, angle: first.box.angle + off }, first.scale)
  return massOf(again.glyphs) > 0.95 * massOf(first.glyphs) ? again : first
}

/** Of digits and letters, the height that three quarters of them do not exceed; null where nothing is seen. */
function heightOf(glyphs: readonly SeenGlyph[]): number | null {
  const tall = glyphs.filter(
    ({ present, alternatives }) => present > 0.4 && /[0-9A-Z]/.test(alternatives[0]?.text ?? ''),
  )
  return heightOfMost(tall.map(({ height }) => height)) ?? null
}
