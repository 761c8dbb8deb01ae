import type { GreyPicture } from '../../imaging/index.ts'
import type { LengthContext } from '../../quantity/parse/parse-length.ts'
import type { NamedGlyph } from '../hand/learn-hand.ts'
import { namedGlyphs } from '../hand/named-glyphs.ts'
import { bestLook } from './best-look.ts'
import type { BoxToRead } from './box-to-read.ts'
import type { GlyphReader } from './glyph-reader.ts'

/** A figure of a page that somebody has read. */
export interface KnownFigure {
  readonly box: BoxToRead
  readonly text: string
}

/**
 * The glyphs of a figure by their names, as somebody's reading of it tells them, so that its hand can be learned
 * (`handOfFigures`). None where text and strokes do not go together. What the reader knows of a hand is left aside.
 * @param picture what of the page holds the box, and some room round it
 * @param context what a bare number and a gauge number mean
 */
export function glyphsOfKnownFigure(
  { network, weights }: GlyphReader,
  picture: GreyPicture,
  { box, text }: KnownFigure,
  context: LengthContext = {},
): readonly NamedGlyph[] {
  const read = bestLook({ network, weights }, picture, box, context)
  return read === null ? [] : namedGlyphs(text, read.look.glyphs, read.ways, weights.glyphs)
}
