import type { GreyPicture } from '../../imaging/window/grey-picture.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import type { TurnedBox } from '../patch/sample-upright.ts'
import { type UprightWay, uprightWays } from '../upright/upright-ways.ts'
import type { BoxToRead } from './box-to-read.ts'
import type { GlyphReader } from './glyph-reader.ts'
import { type Look, lookAt } from './look.ts'

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

/** What is seen in a box in the way that most is seen, at the scale that its glyphs ask for. */
export function bestLook(reader: GlyphReader, picture: GreyPicture, box: BoxToRead): Look | null {
  const ways = box.angle === undefined ? uprightWays(picture, box) : [asGiven(box, box.angle)]
  const around = AROUND * Math.min(box.width, box.height)
  const isWithin = inBox(box, OUTSIDE * Math.min(box.width, box.height))
  const look = (turned: TurnedBox, height: number): Look =>
    lookAt(reader, picture, { box: turned, scale: BEST_HEIGHT / height, around }, isWithin)
  let best: { look: Look; way: UprightWay; worth: number } | null = null
  for (const way of ways) {
    const seen = look(way.box, way.digitHeights[0] ?? box.height)
    const worth = massOf(seen.glyphs) * way.weight ** HEED
    if (best === null || worth > best.worth) best = { look: seen, way, worth }
  }
  if (best === null) return null
  let { look: first } = best
  for (const height of best.way.digitHeights.slice(1)) {
    if (isOfGoodHeight(first)) break
    const other = look(best.way.box, height)
    if (massOf(other.glyphs) > massOf(first.glyphs)) first = other
  }
  const height = heightOf(first.glyphs)
  if (height === null || isOfGoodHeight(first)) return first
  const second = look(best.way.box, height / first.scale)
  return massOf(second.glyphs) > 0.9 * massOf(first.glyphs) ? second : first
}

function isOfGoodHeight({ glyphs }: Look): boolean {
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
