import type { GreyPicture } from '../../imaging/window/grey-picture.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import type { BoxToRead } from '../read-box.ts'
import type { GlyphReader } from './glyph-reader.ts'
import { type Look, lookAt } from './look.ts'

/** Height of full digits that the network knows best, pixels. */
const BEST_HEIGHT = 21
/** It knows them well between these shares of it. */
const [LEAST, MOST] = [0.82, 1.18]
/** Height at which a box is looked at first: of one row, digits come out a little large, of a stacked fraction a little small. */
const FIRST_HEIGHT = 36
/** How much is looked at round the box, as a share of its height. */
const AROUND = 0.25
/** Centres of glyphs may lie outside of the box by this share of its height. */
const OUTSIDE = 0.04

/** Looks at a box in each direction, and once more at the scale that its glyphs ask for where they are best seen. */
export function bestLook(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
  angles: readonly number[],
): Look {
  const looks = angles.map((angle) => {
    const turned = turnedBox(box, angle)
    const least = Math.min(turned.width, turned.height)
    return look(reader, picture, box, angle, FIRST_HEIGHT / least)
  })
  const first = looks.reduce((best, one) => (massOf(one.glyphs) > massOf(best.glyphs) ? one : best))
  const height = heightOf(first.glyphs)
  if (height === null || (height > LEAST * BEST_HEIGHT && height < MOST * BEST_HEIGHT)) return first
  const second = look(reader, picture, box, first.box.angle, (first.scale * BEST_HEIGHT) / height)
  return massOf(second.glyphs) > 0.8 * massOf(first.glyphs) ? second : first
}

function look(
  reader: GlyphReader,
  picture: GreyPicture,
  box: BoxToRead,
  angle: number,
  scale: number,
): Look {
  const turned = turnedBox(box, angle)
  const least = Math.min(box.width, box.height)
  return lookAt(reader, picture, { box: turned, scale, around: AROUND * least }, isIn(box, OUTSIDE * least))
}

/** How much is seen, and how surely: what is as likely nothing as something, or anything, counts for nothing. */
export function massOf(glyphs: readonly SeenGlyph[]): number {
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

/** The box itself where its angle is given, else the upright box's own when turned so that it holds it. */
function turnedBox(box: BoxToRead, angle: number) {
  const centre = [box.x + box.width / 2, box.y + box.height / 2] as const
  if (box.angle !== undefined) return { centre, width: box.width, height: box.height, angle }
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
  return { centre, width: box.width * c + box.height * s, height: box.width * s + box.height * c, angle }
}

/** Whether a place of the page lies in the box, or so near to it. */
function isIn(
  { x, y, width, height, angle = 0 }: BoxToRead,
  near: number,
): (place: readonly [number, number]) => boolean {
  const turn = (angle * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return ([px, py]) => {
    const [dx, dy] = [px - x - width / 2, py - y - height / 2]
    return (
      Math.abs(dx * c + dy * s) <= width / 2 + near && Math.abs(dy * c - dx * s) <= height / 2 + near
    )
  }
}
