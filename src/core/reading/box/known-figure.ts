import type { GreyPicture } from '../../imaging/index.ts'
import type { NamedGlyph } from '../hand/learn-hand.ts'
import { namedGlyphs } from '../hand/named-glyphs.ts'
import type { BoxToRead } from './box-to-read.ts'
import type { GlyphReader } from './glyph-reader.ts'
import { looksInto } from './looks-into.ts'
import { viewOf } from './view-of-box.ts'
import { waysOf } from './ways-of-box.ts'

/** A figure of a page that somebody has read. */
export interface KnownFigure {
  readonly box: BoxToRead
  readonly text: string
}

/**
 * The glyphs of a figure by their names, as somebody's reading of it tells them, so that its hand can be learned
 * (`handOfFigures`). None where text and strokes do not go together. What the reader knows of a hand is left aside.
 * @param picture what of the page holds the box, and some room round it
 */
export function glyphsOfKnownFigure(
  { network, weights }: GlyphReader,
  picture: GreyPicture,
  { box, text }: KnownFigure,
): readonly NamedGlyph[] {
  const looks = looksInto(viewOf({ network, weights }, picture, box), box, waysOf(picture, box))
  return namedGlyphs(
    text,
    looks.map(({ look }) => look.glyphs),
    weights.glyphs,
  )
}
