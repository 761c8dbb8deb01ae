import type { LatticeSlot } from '../lattice.ts'
import type { PlacedGlyph } from './placed-glyph.ts'

/** What stands in a row: a glyph, or a stack of two rows of them with a bar between or none. */
export type RowItem =
  | { readonly kind: 'glyph'; readonly glyph: PlacedGlyph }
  | {
      readonly kind: 'stack'
      readonly over: readonly PlacedGlyph[]
      readonly under: readonly PlacedGlyph[]
      /** What stands between the two when they are read: the bar, or a space between two limits. */
      readonly between: LatticeSlot
      readonly sort: 'fraction' | 'limits'
    }

/** A stack that some glyphs may make, as they could as well stand in rows of their own. */
export interface ProposedStack {
  readonly item: RowItem & { readonly kind: 'stack' }
  /** All that stand in it, the bar among them. */
  readonly glyphs: readonly PlacedGlyph[]
  readonly probability: number
}

/** Edges of what stands in a row. */
export interface GlyphExtent {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Edges round some glyphs; of none, nothing. */
export function extentOf(glyphs: readonly GlyphExtent[]): GlyphExtent {
  return {
    left: Math.min(...glyphs.map(({ left }) => left)),
    right: Math.max(...glyphs.map(({ right }) => right)),
    top: Math.min(...glyphs.map(({ top }) => top)),
    bottom: Math.max(...glyphs.map(({ bottom }) => bottom)),
  }
}

export const extentOfItem = (item: RowItem): GlyphExtent =>
  item.kind === 'glyph' ? item.glyph : extentOf([...item.over, ...item.under])
