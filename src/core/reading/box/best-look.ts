import type { GreyPicture } from '../../imaging/index.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { layOut, type WeightedLattice } from '../layout/lay-out.ts'
import type { TurnedBox } from '../patch/sample-upright.ts'
import { type UprightWay, uprightWays } from '../upright/upright-ways.ts'
import type { BoxToRead } from './box-to-read.ts'
import { figuresOfWays, type LikelyFigures } from './figures-of-ways.ts'
import type { GlyphReader } from './glyph-reader.ts'
import { type BoxLook, lookAt } from './look.ts'

/** Height of full digits that the network knows best, pixels. */
const BEST_HEIGHT = 21
/** It knows them well between these shares of it. */
const [LEAST, MOST] = [0.82, 1.18]
/** Height of a box of one row, or of a stacked fraction, in heights of a full digit: between the two. */
const BOX_HEIGHT = 1.7
/** How much is looked at round the box, and how far outside centres of glyphs may lie, as shares of its shorter side. */
const [AROUND, OUTSIDE] = [0.2, 0.04]
/** A way that is so much less likely is still taken where as much more is seen in it: its weight to this power. */
const HEED = 0.25
/** Less than this share of what is seen in the best way, a way is not gone on with. */
const WORTH_READING = 0.35
/** What is seen counts so much even where it makes no figure at all. */
const NO_FIGURE = 0.1

/** A look at a box with what it makes. */
export interface ReadLook {
  readonly look: BoxLook
  readonly ways: readonly WeightedLattice[]
  readonly likely: LikelyFigures
}

/** What is seen in a box in the way that most is seen, and of that most that is a figure, at the scale that its glyphs ask for. */
export function bestLook(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
  context: LengthContext,
): ReadLook | null {
  let best: { read: ReadLook; worth: number } | null = null
  for (const { look: refined, weight } of looksInto(reader, picture, box)) {
    const laidOut = layOut(refined.glyphs)
    const likely = figuresOfWays(laidOut, context)
    const whole = massOf(refined.glyphs) * weight * (NO_FIGURE + likely.fits)
    if (best === null || whole > best.worth)
      best = { read: { look: refined, ways: laidOut, likely }, worth: whole }
  }
  return best?.read ?? null
}

/** What is seen in a box in each way that is worth reading, that first in which most is seen, and how much to heed each. */
export function looksInto(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
): readonly { readonly look: BoxLook; readonly weight: number }[] {
  const short = Math.min(box.width, box.height)
  const isWithin = inBox(box, OUTSIDE * short)
  const look = (turned: TurnedBox, height: number): BoxLook =>
    lookAt(reader, picture, { box: turned, scale: BEST_HEIGHT / height, around: AROUND * short }, isWithin)
  const ways = box.angle === undefined ? uprightWays(picture, box) : [asGiven(box, box.angle)]
  const looks = ways
    .map((way) => {
      const first = look(way.box, way.digitHeights[0] ?? box.height)
      return { way, first, worth: massOf(first.glyphs) * way.weight ** HEED }
    })
    .sort((a, b) => b.worth - a.worth)
  const most = looks[0]?.worth ?? 0
  return looks
    .filter(({ worth }) => worth >= WORTH_READING * most)
    .map(({ way, first }) => ({ look: refine(first, way, look), weight: way.weight ** HEED }))
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

/** How much is seen, and how surely: what is as likely nothing as something, or anything, counts for nothing. */
function massOf(glyphs: readonly SeenGlyph[]): number {
  return glyphs.reduce((sum, { present, alternatives }) => {
    const sure = present * (alternatives[0]?.probability ?? 0)
    return sum + Math.max(0, sure - 0.3)
  }, 0)
}

/** Of digits and letters, the height that three quarters of them do not exceed; null where nothing is seen. */
function heightOf(glyphs: readonly SeenGlyph[]): number | null {
  const tall = glyphs
    .filter(({ present, alternatives }) => present > 0.4 && /[0-9A-Z]/.test(alternatives[0]?.text ?? ''))
    .map(({ height }) => height)
    .sort((a, b) => a - b)
  return tall[Math.floor(tall.length * 0.75)] ?? null
}

/** Whether a place of the page lies in the box, or so near to it. */
function inBox(
  { x, y, width, height, angle = 0 }: BoxToRead,
  near: number,
): (place: readonly [number, number]) => boolean {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return ([px, py]) => {
    const [dx, dy] = [px - x - width / 2, py - y - height / 2]
    return Math.abs(dx * c + dy * s) <= width / 2 + near && Math.abs(dy * c - dx * s) <= height / 2 + near
  }
}
