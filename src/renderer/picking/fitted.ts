import type { Pixel } from '../../core/geometry/frames.ts'
import type { Covariance } from '../../core/imaging/index.ts'
import type { FoundOn } from '../../core/job/model/types.ts'

/** What was found on a stroke for one mark, as a job keeps it. */
export interface Fitted {
  stroke: FoundOn
  /** Of a point: one; of a line or circle: the centres of the profiles that were kept. */
  pixels: Pixel[]
  /** Standard uncertainty of each of the pixels; of a point along the stroke, where it is least settled. */
  sigma: number
  /** Of a point: standard uncertainty across the stroke, pixels; of a crossing: of the better settled way. */
  across: number
  /** Of a point, pixels². */
  covariance?: Covariance
}

/** How far the search for the stroke under a mark's picks is. */
export type StrokeState =
  | { state: 'looking' }
  | { state: 'found'; fitted: Fitted }
  /** because: a sentence. */
  | { state: 'none'; because: string }
