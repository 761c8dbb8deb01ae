import type { Mapping } from './mapping.ts'
import type { ViewFrame } from './view-frame.ts'

/** How a view turns its features into true size. */
export interface ViewMapping {
  mapping: Mapping
  frame: ViewFrame
  /** Standard uncertainty of where a drawn feature lies, mm in true size. */
  draughting: number
}
