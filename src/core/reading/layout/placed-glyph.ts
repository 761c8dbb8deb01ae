import type { SeenGlyph } from '../glyphs/seen-glyph.ts'

/** A glyph with its edges, after the row it stands in was made level. */
export interface PlacedGlyph {
  readonly seen: SeenGlyph
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Middle, down the page. */
  readonly middle: number
  readonly height: number
  /** What it most likely is. */
  readonly name: string
  /** Probability that it stands here, lowered where it stands apart. */
  readonly present: number
}

/** Puts a glyph in its place. @param slope how much rows go down to the right, as a share of how far */
export function placeGlyph(seen: SeenGlyph, slope: number): PlacedGlyph {
  const [x, y] = seen.centre
  const middle = y - slope * x
  return {
    seen,
    left: x - seen.width / 2,
    right: x + seen.width / 2,
    top: middle - seen.height / 2,
    bottom: middle + seen.height / 2,
    middle,
    height: seen.height,
    name: seen.alternatives[0]?.text ?? '',
    present: seen.present,
  }
}

/** How likely a glyph is one of these. */
export function likelihoodOf(seen: SeenGlyph, texts: string): number {
  let sum = 0
  for (const { text, probability } of seen.alternatives)
    if (text !== '' && texts.includes(text)) sum += probability
  return sum
}

/** Digits and letters, which stand as high as the line. */
export const isTall = (name: string): boolean => /^[0-9A-Z#&@Ø]$/.test(name)
export const isDigit = (name: string): boolean => /^[0-9]$/.test(name)
/** A dash, and the bar of a fraction, look alike. */
export const FLAT = '_-='
