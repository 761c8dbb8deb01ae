import type { GreyPicture } from '../../imaging/index.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { slopeOfRows } from '../layout/slope-of-rows.ts'
import type { TurnedBox } from '../patch/sample-upright.ts'
import { fromTheOtherSide, type UprightWay, uprightWays } from '../upright/upright-ways.ts'
import type { BoxToRead } from './box-to-read.ts'
import { massOf } from './glyph-mass.ts'
import type { GlyphReader } from './glyph-reader.ts'
import type { BoxLook } from './look.ts'
import { type BoxView, viewOf } from './view-of-box.ts'

/** Height of full digits that the network knows best, pixels. */
const BEST_HEIGHT = 21
/** It knows them well between these shares of it. */
const [LEAST, MOST] = [0.82, 1.18]
/** Height of a box of one row, or of a stacked fraction, in heights of a full digit: between the two. */
const BOX_HEIGHT = 1.7
/** How much is looked at round the box, as a share of its shorter side. */
const AROUND = 0.2
/** A way that is so much less likely is still taken where as much more is seen in it: its weight to this power. */
const HEED = 0.25
/** Less than this share of what is seen in the best way, a way is not gone on with. */
const WORTH_READING = 0.35
/** Rows that run so far off the box's turn are looked at once more along them, degrees. */
const LEVEL = 1.2
/** So near to upright, lettering is meant to be so, degrees. */
const STRAIGHT = 5

/** A box that is longer than so many times its other side shows which way its lettering runs. */
const SHORT = 2
/** Only what holds a few glyphs is looked at all round: it is no longer, across, than so many digits are high. */
const FEW = 8
/** All round, so many directions are looked in; how much each is to be heeded. */
const [ROUND, ANY_WAY] = [12, 0.5]

/** A look at a box, and how much its way is to be heeded. */
export interface WeightedLook {
  readonly look: BoxLook
  readonly weight: number
}

/** A box has no more rows of full digits than so many: each row of a call-out may hold a stacked fraction. */
const MOST_ROWS = 6
/** Nobody drags a box so many digits higher and wider than a figure, nor are digits read of fewer pixels than these. */
const [LOOSE, SMALLEST] = [10, 5]
/** So many glyphs, so sure on the whole, leave no doubt which way they are read. */
const [MANY, SURELY] = [6, 0.85]

/** A way with a first look at it. */
interface FirstLook {
  readonly way: UprightWay
  readonly first: BoxLook
  /** How much is seen, and how much that way is to be heeded. */
  readonly worth: number
}

/** What is seen in a box in each way that is worth reading, that first in which most is seen, and how much to heed each. */
export function looksInto(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
): readonly WeightedLook[] {
  const around = AROUND * Math.min(box.width, box.height)
  const see = viewOf(reader, picture, box)
  const look = (turned: TurnedBox, height: number): BoxLook => see(turned, BEST_HEIGHT / height, around)
  const firstLook = (way: UprightWay): FirstLook => {
    const first = look(way.box, way.digitHeights[0] ?? box.height)
    return { way, first, worth: massOf(first.glyphs) * way.weight ** HEED }
  }
  const firsts: FirstLook[] = []
  for (const way of waysOf(picture, box)) {
    const one = firstLook(way)
    firsts.push(one)
    if (isBeyondDoubt(one)) break
  }
  const most = Math.max(...firsts.map(({ worth }) => worth))
  return withOtherSide(firsts, most, firstLook)
    .filter(({ worth }) => worth >= WORTH_READING * most)
    .sort((a, b) => b.worth - a.worth)
    .map(({ way, first }) => ({ look: levelled(refine(first, way, look), see), weight: way.weight ** HEED }))
}

/** The ways a box may be read in, likeliest first; digits that would be far too small for it are none. */
function waysOf(picture: GreyPicture, box: BoxToRead): readonly UprightWay[] {
  if (box.angle !== undefined) return [asGiven(box, box.angle)]
  return uprightWays(picture, box).map((way) => {
    const least = Math.max(way.box.height / MOST_ROWS, Math.min(box.width, box.height) / LOOSE, SMALLEST)
    const digitHeights = way.digitHeights.map((high) => Math.max(high, least))
    return { ...way, digitHeights }
  })
}

/** So many glyphs seen so surely are not read another way as well. */
function isBeyondDoubt({ first }: FirstLook): boolean {
  const sure = first.glyphs
    .filter(({ present }) => present > 0.3)
    .map(({ present, alternatives }) => present * (alternatives[0]?.probability ?? 0))
  return sure.length >= MANY && sure.reduce((sum, one) => sum + one, 0) > SURELY * sure.length
}

/** What is seen in a box in directions all round, the two in which most is: where how its ink lies does not tell the way. */
export function looksAllRound(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
): readonly WeightedLook[] {
  if (box.angle !== undefined || Math.max(box.width, box.height) > SHORT * Math.min(box.width, box.height))
    return []
  const [way] = waysOf(picture, box)
  if (way === undefined) return []
  const see = viewOf(reader, picture, box)
  const look = (turned: TurnedBox, height: number): BoxLook => see(turned, BEST_HEIGHT / height)
  const side = Math.hypot(box.width, box.height)
  const centre = [box.x + box.width / 2, box.y + box.height / 2] as const
  const high = way.digitHeights[0] ?? side / BOX_HEIGHT
  if (side > FEW * high) return []
  return Array.from({ length: ROUND }, (_, i) => {
    const turned = { centre, width: side, height: side, angle: -90 + (180 / ROUND) * i }
    const all = { box: turned, digitHeights: way.digitHeights, weight: 1 }
    return { way: all, first: look(turned, high) }
  })
    .sort((a, b) => massOf(b.first.glyphs) - massOf(a.first.glyphs))
    .slice(0, 2)
    .map(({ way: one, first }) => ({ look: levelled(refine(first, one, look), see), weight: ANY_WAY }))
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

/** Looks once more, along the rows, where these do not run as the box was turned. */
function levelled(first: BoxLook, see: BoxView): BoxLook {
  const off = (Math.atan(slopeOfRows(first.glyphs)) * 180) / Math.PI
  if (Math.abs(off) < LEVEL) return first
  const again = see({ ...first.box, angle: first.box.angle + off }, first.scale)
  return massOf(again.glyphs) > 0.95 * massOf(first.glyphs) ? again : first
}

/** Looks once more where the digits are not of the height that the network knows best. */
function refine(
  first: BoxLook,
  { box, digitHeights }: UprightWay,
  look: (box: TurnedBox, height: number) => BoxLook,
): BoxLook {
  let best = first
  for (const height of digitHeights.slice(1)) {
    if (isOfGoodHeight(best)) break
    const other = look(box, height)
    if (massOf(other.glyphs) > massOf(best.glyphs)) best = other
  }
  const height = heightOf(best.glyphs)
  if (height === null || isOfGoodHeight(best)) return best
  const again = look(box, height / best.scale)
  return massOf(again.glyphs) > 0.9 * massOf(best.glyphs) ? again : best
}

function isOfGoodHeight({ glyphs }: BoxLook): boolean {
  const height = heightOf(glyphs)
  return height !== null && height > LEAST * BEST_HEIGHT && height < MOST * BEST_HEIGHT
}

/** The way that is known. Whether the box holds one row or a fraction is not, unless the height of its digits is given. */
function asGiven(
  { x, y, width, height, digitHeight = height / BOX_HEIGHT }: BoxToRead,
  angle: number,
): UprightWay {
  const centre = [x + width / 2, y + height / 2] as const
  return { box: { centre, width, height, angle }, digitHeights: [digitHeight], weight: 1 }
}

/** Of digits and letters, the height that three quarters of them do not exceed; null where nothing is seen. */
function heightOf(glyphs: readonly SeenGlyph[]): number | null {
  const tall = glyphs
    .filter(({ present, alternatives }) => present > 0.4 && /[0-9A-Z]/.test(alternatives[0]?.text ?? ''))
    .map(({ height }) => height)
    .sort((a, b) => a - b)
  return tall[Math.floor(tall.length * 0.75)] ?? null
}
