import type { Hand } from '../hand/hand.ts'
import { GlyphNetwork } from '../network/glyph-network.ts'
import { WEIGHTS } from '../network/weights.ts'
import type { NetworkWeights } from '../network/weights-form.ts'

/** What glyphs are seen by. Made once, for it takes a tenth of a second. */
export interface GlyphReader {
  readonly network: GlyphNetwork
  readonly weights: NetworkWeights
  /** Whose lettering is read, as far as it was learned. */
  readonly hand?: Hand
}

/** The reader of figures as it was trained. */
export const glyphReader = (): GlyphReader => ({ network: new GlyphNetwork(WEIGHTS), weights: WEIGHTS })

/** The same reader for the lettering of a hand; undefined: of nobody in particular. It shares the network. */
export const readerOfHand = ({ network, weights }: GlyphReader, hand: Hand | undefined): GlyphReader =>
  hand === undefined ? { network, weights } : { network, weights, hand }
