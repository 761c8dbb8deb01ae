import type { Pixel } from '../../geometry/frames.ts'
import type { MarkKind } from '../../job/model/types.ts'
import type { Source } from '../../uncertainty/source.ts'
import type { PeopleScatter } from './people.ts'

/** How one source of picking error moves one of a feature's points, in pixels per unit of the source. */
export interface Move {
  source: Source
  point: number
  dx: number
  dy: number
}

/** A mark ready to be measured: the points that define it and what makes them uncertain. */
export interface Feature {
  mark: string
  kind: MarkKind
  /** point: one; line: its two ends; circle and path: every picked point. Pixels. */
  points: readonly Pixel[]
  closed: boolean
  /** circle: where its centre appears, pixels. */
  centre?: Pixel
  /** Sorted so that moves of one source stand together. */
  picking: readonly Move[]
  /** point: x and y; line: each end across the line; circle: centre x, y and radius; path: x and y of each point. */
  draughting: readonly Source[]
  /** How the picks of a line of more than two, or of what was picked again, lie about it. Pixels. */
  scatter?: { squares: number; dof: number; sigma: number }
  /** How they differ where several people picked it. */
  people?: PeopleScatter
}
