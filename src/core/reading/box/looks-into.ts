import { surenessOf } from '../glyphs/sureness.ts'
import { BEST_HEIGHT } from '../network/best-height.ts'
import { fromTheOtherSide, type UprightWay } from '../upright/upright-ways.ts'
import type { BoxToRead } from './box-to-read.ts'
import { massOf } from './glyph-mass.ts'
import type { BoxLook } from './look.ts'
import { refinedLook } from './refined-look.ts'
import type { BoxView } from './view-of-box.ts'

/** How much is looked at round the box, as a share of its shorter side. */
const AROUND = 0.2
/** A way that is so much less likely is still taken where as much more is seen in it: its weight to this power. */
const HEED = 0.25
/** Less than this share of what is seen in the best way, a way is not gone on with. */
const WORTH_READING = 0.35
/** So near to upright, lettering is meant to be so, degrees. */
const STRAIGHT = 5
/** So many glyphs, so sure on the whole, leave no doubt which way they are read. */
const [MANY, SURELY] = [6, 0.85]

/** A look at a box, and how much its way is to be heeded. */
export interface WeightedLook {
  readonly look: BoxLook
  readonly weight: number
}

/** A way with a first look at it. */
interface FirstLook {
  readonly way: UprightWay
  readonly first: BoxLook
  /** How much is seen, and how much that way is to be heeded. */
  readonly worth: number
}

/**
 * What is seen in a box in each way that is worth reading, that first in which most is seen, and how much to heed each.
 * @param ways it may be read in, likeliest first (`waysOf`)
 */
export function looksInto(
  see: BoxView,
  box: BoxToRead,
  ways: readonly UprightWay[],
): readonly WeightedLook[] {
  const around = AROUND * Math.min(box.width, box.height)
  const firstLook = (way: UprightWay): FirstLook => {
    const first = see(way.box, BEST_HEIGHT / (way.digitHeights[0] ?? box.height), around)
    return { way, first, worth: massOf(first.glyphs) * way.weight ** HEED }
  }
  const firsts: FirstLook[] = []
  for (const way of ways) {
    const one = firstLook(way)
    firsts.push(one)
    if (isBeyondDoubt(one)) break
  }
  const most = Math.max(...firsts.map(({ worth }) => worth))
  return withOtherSide(firsts, most, firstLook)
    .filter(({ worth }) => worth >= WORTH_READING * most)
    .sort((a, b) => b.worth - a.worth)
    .map(({ way, first }) => ({ look: refinedLook(first, way, see, around), weight: way.weight ** HEED }))
}

/** So many glyphs seen so surely are not read another way as well. */
function isBeyondDoubt({ first }: FirstLook): boolean {
  const sure = first.glyphs.filter(({ present }) => present > 0.3).map(surenessOf)
  return sure.length >= MANY && sure.reduce((sum, one) => sum + one, 0) > SURELY * sure.length
}

/** Read from the right, it may as well be read from the left: that too, where it is not among the ways. */
function withOtherSide(
  ways: readonly FirstLook[],
  most: number,
  look: (way: UprightWay) => FirstLook,
): readonly FirstLook[] {
  const steep = ways.find(({ way }) => isTurnedBy(way, -90))
  if (steep === undefined || steep.worth < WORTH_READING * most) return ways
  return ways.some(({ way }) => isTurnedBy(way, 90)) ? ways : [...ways, look(fromTheOtherSide(steep.way))]
}

const isTurnedBy = ({ box }: UprightWay, angle: number): boolean => Math.abs(box.angle - angle) <= STRAIGHT
