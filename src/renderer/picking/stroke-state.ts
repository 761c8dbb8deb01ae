import type { UnnamedMark } from '../../core/job/from-picks/picked-mark.ts'
import type { AnyReason } from '../../core/words/reason.ts'

/** How far the search for the stroke under a mark's picks is. */
export type StrokeState =
  | { state: 'looking' }
  /** mark: as a job would keep it. */
  | { state: 'found'; mark: UnnamedMark }
  | { state: 'none'; because: AnyReason }
