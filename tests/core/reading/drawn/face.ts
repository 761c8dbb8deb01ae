import type { SKRSContext2D } from '@napi-rs/canvas'

/** Room of one glyph, in heights of a full digit; from its origin on the baseline, x right, y down. */
export interface GlyphRoom {
  readonly advance: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** One hand or fount at work on one figure. */
export interface Face {
  room(glyph: string): GlyphRoom
  /** Draws a glyph in the context's colours, `size` pixels high, from its origin on the baseline. */
  draw(context: SKRSContext2D, glyph: string, x: number, y: number, size: number): void
  /** Width of the strokes, in heights of a full digit: that of a fraction bar, too. */
  readonly stroke: number
  /** How far its uprights lean to the right, degrees. */
  readonly slant: number
  /** How far a glyph may stand off its place, in heights: a typewriter's, a hand's. */
  readonly unsteady: number
}
