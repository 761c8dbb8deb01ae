import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke, GreyWindow } from '../../core/imaging/index.ts'
import type { AnyReason } from '../../core/words/reason.ts'
import type { SearchWish } from './search-wish.ts'

/** That no stroke was found, or none looked for. */
export interface NotFound {
  kind: 'none'
  because: AnyReason
}

/** What the window asks of the worker that looks for strokes. */
export interface ToSearcher {
  ask: number
  /** The scan where the search looks at it. */
  windows: readonly GreyWindow[]
  /** Where it was pointed at, pixels of the scan. */
  rough: readonly Pixel[]
  wish: SearchWish
}

export interface FromSearcher {
  ask: number
  found: FoundStroke | NotFound
}
