import { createStore } from 'zustand/vanilla'
import type { Pixel } from '../../core/geometry/frames.ts'
import type { FoundStroke } from '../../core/imaging/index.ts'
import type { AnyReason } from '../../core/words/reason.ts'

/** What a pick where the pointer is would take. Apart from the bench, so that it renders nothing. */
export type UnderPointer =
  /** Nothing is looked for: by hand, or nothing that has a stroke. */
  | { state: 'hand' }
  /** The tool has all that it asks for. */
  | { state: 'complete' }
  /** Too far off to tell what is meant. */
  | { state: 'far' }
  | { state: 'looking' }
  | { state: 'found'; at: Pixel; found: FoundStroke }
  | { state: 'none'; at: Pixel; because: AnyReason }

export const underPointer = createStore<{ now: UnderPointer }>(() => ({ now: { state: 'hand' } }))
