/**
 * How one hand writes otherwise than the letterings that the network was trained on: what is added to the log-likelihood
 * of each glyph for each of its traits.
 */
export interface Hand {
  /** Glyphs × traits, row by row. */
  readonly more: Float32Array
  readonly traits: number
  /** How many glyphs it was learned from. */
  readonly learnedFrom: number
}

/** Log-likelihoods of the glyphs as this hand would write them. @param traits of the glyph in question */
export function likelierBy(hand: Hand | undefined, logs: Float32Array, traits: Float32Array): Float32Array {
  if (hand === undefined) return logs
  return logs.map((log, glyph) => {
    let sum = log
    for (let i = 0; i < traits.length; i++)
      sum += (hand.more[glyph * hand.traits + i] ?? 0) * (traits[i] ?? 0)
    return sum
  })
}
