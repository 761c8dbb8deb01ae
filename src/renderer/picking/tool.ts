import type { MarkNeed } from '../../core/job/model/mark-needs.ts'
import type { Measure } from '../../core/job/model/types.ts'

/** What a tool measures by itself; the sizes of a slot are taken all at once, by the tool for it. */
export type ToolMeasure = Exclude<Measure, 'slot-width' | 'slot-length'>

export type ReferenceKind = 'distance' | 'diameter' | 'rectangle'

/** What a pick on the sheet is for. */
export type Tool =
  /** Looking and choosing only. */
  | { kind: 'look' }
  /** Two opposite corners of a view: of a new one, or of one that there is. */
  | { kind: 'outline'; view?: string }
  /** The marks of a size that is known. */
  | { kind: 'reference'; view: string; reference: ReferenceKind }
  /** The marks of a size that is wanted. */
  | { kind: 'measure'; view: string; measure: ToolMeasure }
  /** The circle through the middles of holes, three or more; its diameter is wanted. */
  | { kind: 'measure'; view: string; measure: 'diameter'; through: 'holes' }
  /** The two round ends of a slot, each by one pick; its width, its length and what lies between its centres are wanted. */
  | { kind: 'measure'; view: string; measure: 'centres'; of: 'slot' }
  /** The sheet's edge, or a line that is meant to be horizontal. */
  | { kind: 'straighten' }
  /** A place that is to be found on another picture of the same sheet as well. */
  | { kind: 'common' }
  /** Two opposite corners of a box round a printed figure. */
  | { kind: 'figure' }
  /** Two opposite corners of the region that a note is about: of a new note, or of one that there is. */
  | { kind: 'note'; note?: string }
  /** A mark once more, without sight of how it was picked before. called: `circle 12` */
  | { kind: 'repeat'; mark: string; called: string; need: MarkNeed }

/** Whether a tool takes circle after circle until it is ended. */
export const isThroughHoles = (tool: Tool): boolean => 'through' in tool

/** Whether a tool picks the two round ends of a slot. */
export const isSlot = (tool: Tool): boolean => 'of' in tool

/** Whether a tool picks a region by two opposite corners, so that it can be dragged as well. */
export const isCornerToCorner = ({ kind }: Tool): boolean =>
  kind === 'outline' || kind === 'note' || kind === 'figure'
