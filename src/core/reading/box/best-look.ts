import type { GreyPicture } from '../../imaging/index.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import { layOut, type WeightedLattice } from '../layout/lay-out.ts'
import type { BoxToRead } from './box-to-read.ts'
import { figuresOfWays, type LikelyFigures, meanOfLikely } from './figures-of-ways.ts'
import { massOf } from './glyph-mass.ts'
import type { GlyphReader } from './glyph-reader.ts'
import type { BoxLook } from './look.ts'
import { looksAllRound } from './looks-all-round.ts'
import { looksInto, type WeightedLook } from './looks-into.ts'
import { type BoxView, viewOf } from './view-of-box.ts'
import { waysOf } from './ways-of-box.ts'

/** What is seen counts so much even where it makes no figure at all. */
const NO_FIGURE = 0.1

/** Where all ways together make less of a figure than this, more are looked in. */
const HARDLY = 0.3
/** Other scales at which what is seen is looked at again, as shares of the first. */
const OTHER_SCALES = [0.88, 1.13]
/** A way that is worth less than this share of the best is not looked at again. */
const WORTH_LOOKING_AGAIN = 0.3
/** A way counts beside the best by its share of that one's worth to this power. Chosen on 520 figures of `held-figures.ts`. */
const DECIDED = 4

/** A look at a box with what it makes. */
export interface ReadLook {
  readonly look: BoxLook
  readonly ways: readonly WeightedLattice[]
  readonly likely: LikelyFigures
}

/**
 * What is seen in a box, at the scale that its glyphs ask for, in the way that most is seen and of that most that is a
 * figure; and the figures that it may be, those of ways that are nearly as likely among them.
 */
export function bestLook(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
  context: LengthContext,
): ReadLook | null {
  const see = viewOf(reader, picture, box)
  const made = ({ look, weight }: WeightedLook): WorthyLook => madeOf(look, weight, context)
  const ways = waysOf(picture, box)
  const asInkLies = looksInto(see, box, ways).map(made)
  const tells = asInkLies.some(({ likely }) => likely.fits >= HARDLY)
  const once = tells ? asInkLies : [...asInkLies, ...looksAllRound(see, box, ways).map(made)]
  const most = Math.max(...once.map(({ worth }) => worth))
  const all = once
    .filter(({ worth }) => worth >= WORTH_LOOKING_AGAIN * most)
    .map((one) => atOtherScales(one, see, context))
    .sort((a, b) => b.worth - a.worth)
  const [best] = all
  if (best === undefined) return null
  const shares = all.map(({ worth }) => (best.worth > 0 ? (worth / best.worth) ** DECIDED : 1))
  return {
    look: best.look,
    ways: best.ways,
    likely: meanOfLikely(
      all.map(({ likely }) => likely),
      shares,
    ),
  }
}

/** A look in one way, what it makes, and how much speaks for it. */
interface WorthyLook extends ReadLook {
  readonly weight: number
  readonly mass: number
  readonly worth: number
}

function madeOf(look: BoxLook, weight: number, context: LengthContext): WorthyLook {
  const ways = layOut(look.glyphs)
  const likely = figuresOfWays(ways, context)
  const mass = massOf(look.glyphs)
  return { look, ways, likely, weight, mass, worth: worthOf(mass, weight, likely) }
}

const worthOf = (mass: number, weight: number, { fits }: LikelyFigures): number =>
  mass * weight * (NO_FIGURE + fits)

/** What strokes show at several scales is there; what comes and goes with the scale is hardly. */
function atOtherScales(one: WorthyLook, see: BoxView, context: LengthContext): WorthyLook {
  const { look, weight } = one
  const others = OTHER_SCALES.map((share) => madeOf(see(look.box, look.scale * share), weight, context))
  const all = [one, ...others]
  const likely = meanOfLikely(all.map((each) => each.likely))
  const mass = all.reduce((sum, each) => sum + each.mass, 0) / all.length
  return { ...one, likely, mass, worth: worthOf(mass, weight, likely) }
}
