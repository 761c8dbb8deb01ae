import { BEST_HEIGHT } from '../network/best-height.ts'
import type { UprightWay } from '../upright/upright-ways.ts'
import type { BoxToRead } from './box-to-read.ts'
import { massOf } from './glyph-mass.ts'
import type { WeightedLook } from './looks-into.ts'
import { refinedLook } from './refined-look.ts'
import type { BoxView } from './view-of-box.ts'

/** A box that is longer than so many times its other side shows which way its lettering runs. */
const SHORT = 2
/** Only what holds a few glyphs is looked at all round: it is no longer, across, than so many digits are high. */
const FEW = 8
/** All round, so many directions are looked in; how much each is to be heeded. */
const [ROUND, ANY_WAY] = [12, 0.5]

/**
 * What is seen in a box in directions all round, the two in which most is: where how its ink lies does not tell the way.
 * @param ways the box may be read in by how its ink lies (`waysOf`)
 */
export function looksAllRound(
  see: BoxView,
  box: BoxToRead,
  ways: readonly UprightWay[],
): readonly WeightedLook[] {
  const [likeliest] = ways
  const [short, long] = [Math.min(box.width, box.height), Math.max(box.width, box.height)]
  if (likeliest === undefined || box.angle !== undefined || long > SHORT * short) return []
  const side = Math.hypot(box.width, box.height)
  const centre = [box.x + box.width / 2, box.y + box.height / 2] as const
  const { digitHeights } = likeliest
  const [high] = digitHeights
  if (high === undefined || side > FEW * high) return []
  return Array.from({ length: ROUND }, (_, i) => {
    const turned = { centre, width: side, height: side, angle: -90 + (180 / ROUND) * i }
    const way: UprightWay = { box: turned, digitHeights, weight: 1 }
    return { way, first: see(turned, BEST_HEIGHT / high) }
  })
    .sort((a, b) => massOf(b.first.glyphs) - massOf(a.first.glyphs))
    .slice(0, 2)
    .map(({ way, first }) => ({ look: refinedLook(first, way, see, 0), weight: ANY_WAY }))
}
