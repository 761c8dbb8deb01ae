import type { Screen } from '../../core/geometry/frames.ts'
import type { LetteredBox } from './geometry-on-screen.ts'
import type { Item, LineType } from './items.ts'

/** A line on the screen. */
export interface Stroke {
  points: readonly Screen[]
  line: LineType
  closed?: boolean
  /** Witness lines and outlines are drawn with the fine pen. */
  fine?: boolean
}

/** One item where it falls on the screen, ready to be drawn and to be hit. */
export interface Laid {
  item: Item
  strokes: readonly Stroke[]
  /** Arrowheads: the tip, and the direction it points in (radians). */
  arrows: readonly { tip: Screen; angle: number }[]
  /** The figure on a dimension line; null where there is no room for it. */
  figure: (LetteredBox & { text: string }) | null
  /** The line to a figure that stands away from what it quotes; left out where there is none. */
  leader?: readonly Screen[]
  /** The tab on the frame of a view: its name, and under it what is said of the one that is chosen. Null for what has none. */
  title: (LetteredBox & { title: string; lines: readonly string[] }) | null
  /** A word beside it, and where. */
  word: { at: Screen; text: string } | null
}
