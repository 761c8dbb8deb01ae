import type { GreyPicture } from '../../imaging/index.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { glyphsOf } from '../network/peaks.ts'
import { inkOf } from '../patch/ink-of.ts'
import { sampleUpright, type TurnedBox } from '../patch/sample-upright.ts'
import { placeOnPage } from '../patch/upright-places.ts'
import type { GlyphReader } from './glyph-reader.ts'

/** What was seen in a turned box at one scale. Places of glyphs are pixels of the box set upright. */
export interface BoxLook {
  readonly box: TurnedBox
  /** Pixels of the upright box to a pixel of the page. */
  readonly scale: number
  readonly glyphs: readonly SeenGlyph[]
}

/**
 * Looks for glyphs in a turned box of a scan, its surroundings seen as well.
 * @param around how much more is looked at on every side, pixels of the page
 * @param isWithin whether a place of the page may be one of a glyph's centre
 */
export function lookAt(
  { network, weights, hand }: GlyphReader,
  picture: GreyPicture,
  { box, scale, around }: { box: TurnedBox; scale: number; around: number },
  isWithin: (place: readonly [number, number]) => boolean,
): BoxLook {
  const wide = { ...box, width: box.width + 2 * around, height: box.height + 2 * around }
  const field = inkOf(sampleUpright(picture, wide, scale))
  const glyphs = glyphsOf(network.look(field), weights, hand).filter(({ centre }) =>
    isWithin(placeOnPage(wide, scale, centre)),
  )
  return { box: wide, scale, glyphs }
}
