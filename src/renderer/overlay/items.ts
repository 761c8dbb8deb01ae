import type { Pixel, Vector } from '../../core/geometry/frames.ts'
import type { Selection } from '../bench/selection.ts'
import type { MarkShape } from './shape.ts'
import type { SizeSpan } from './span.ts'

/** Line types: which basis governs is told by them alone. */
export type LineType = 'full' | 'dashed' | 'double' | 'dotted' | 'full and dashed' | 'chain'

/** One thing that is drawn over a sheet: where in pixels of the scan; widths and lettering are in screen units. */
export type Item = { about: Selection; chosen: boolean } & (
  | { kind: 'view'; outline: readonly Pixel[]; title: string; lines: readonly string[] }
  | {
      kind: 'size'
      span: SizeSpan
      text: string
      line: LineType
      /** Figured sizes that are known are told from those that are wanted by the box round them. */
      known: boolean
      /** Something is wrong with it, in words; empty when nothing is. */
      wrong: string
      /** Which of several dimension lines that would fall on each other. */
      lane: number
      /** The view that it is taken in, by its id. */
      view: string
      /** Which way is out of the view that it belongs to; null when that is not known. */
      inside: Pixel | null
    }
  /** profiles: of a chosen mark, what it was found from. again: where it was picked again. */
  | {
      kind: 'mark'
      shape: MarkShape
      profiles?: { kept: readonly Pixel[]; leftOut: readonly Pixel[] }
      again?: readonly Pixel[]
      /** The edge of its stroke that it lies on; left out where it lies along the middle. */
      edge?: string
    }
  /** word: what should be known of it; empty when nothing. */
  | { kind: 'residual'; at: Pixel; vector: Vector<Pixel>; wrong: boolean; word: string }
  /**
   * bracketed: whether its region is drawn, and not its number alone. printed: boxes of the printed figures of its sheet,
   * which its number keeps off.
   */
  | {
      kind: 'note'
      outline: readonly Pixel[]
      number: string
      bracketed: boolean
      printed: readonly (readonly [x: number, y: number, width: number, height: number])[]
    }
  /** What was found to be read: what became of it, and whether the reading is clear. */
  | {
      kind: 'found figure'
      box: readonly [x: number, y: number, width: number, height: number]
      line: LineType
    }
  | { kind: 'figure box'; box: readonly [x: number, y: number, width: number, height: number] }
)
