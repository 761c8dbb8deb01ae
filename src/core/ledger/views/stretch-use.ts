import type { Uncertain } from '../../uncertainty/uncertain.ts'

/** How a view comes by the stretch of its sheet. */
export type StretchUse =
  /** It has what other views tell, beside its own figured sizes, or in place of what they do not tell. */
  | { by: 'views'; names: readonly string[]; own: boolean; stretch: Uncertain }
  /** Nothing tells, so that what paper does is allowed for. */
  | { by: 'paper'; stretch: Uncertain }
  /** It tells otherwise than the others do, and keeps to its own figured sizes. */
  | { by: 'itself'; names: readonly string[]; p: number; stretch: Uncertain }
