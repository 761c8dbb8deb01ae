import { type Edges, edgesRound } from '../glyphs/edges.ts'
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

export const extentOfItem = (item: RowItem): Edges =>
  item.kind === 'glyph' ? item.glyph : edgesRound([...item.over, ...item.under])
