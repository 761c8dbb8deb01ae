import type { GreyPicture } from '../../imaging/index.ts'
import type { TurnedBox } from '../patch/sample-upright.ts'
import type { BoxToRead } from './box-to-read.ts'
import type { GlyphReader } from './glyph-reader.ts'
import { type BoxLook, lookAt } from './look.ts'

/** How far outside a box centres of glyphs may lie, as a share of its shorter side. */
const OUTSIDE = 0.04

/** Looks at a turned box of the page, at so many pixels to one of the page, and so far round it. */
export type BoxView = (turned: TurnedBox, scale: number, around?: number) => BoxLook

/** Looks at what is in a box, turned and at a scale, as it is asked. */
export function viewOf(reader: GlyphReader, picture: GreyPicture, box: BoxToRead): BoxView {
  const isWithin = inBox(box, OUTSIDE * Math.min(box.width, box.height))
  return (turned, scale, around = 0) => lookAt(reader, picture, { box: turned, scale, around }, isWithin)
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
