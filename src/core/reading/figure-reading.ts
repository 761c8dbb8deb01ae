import type { QuantityKind } from '../quantity/quantity-kind.ts'
import type { Lattice } from './lattice.ts'

/** A figure as it was read in a box of a page, with how sure that is and what else it could be. */
export interface FigureReading {
  /** Upright box round what was read, [x, y, width, height] in pixels of the page. */
  readonly box: readonly [number, number, number, number]
  /** Degrees clockwise on the page by which the lettering is turned from level: −90 is read from the right. */
  readonly angle: number
  /** The figure, in the notation of `formatFigure`; null: its strokes make no figure. */
  readonly text: string | null
  /** What the strokes say, glyph by glyph, whether that is a figure or not; empty where nothing was seen. */
  readonly asRead: string
  /** mm, degrees or a count, by its kind; null without a figure. */
  readonly value: number | null
  readonly kind: QuantityKind | null
  /** Whether it is sure enough to be taken as a clear figure. */
  readonly clear: boolean
  /** That `text` is what is written there: in the long run, so many are. 0 without a figure. */
  readonly probability: number
  /** What else it could be, most probable first. */
  readonly alternatives: readonly { readonly text: string; readonly probability: number }[]
  readonly lattice: Lattice
}
