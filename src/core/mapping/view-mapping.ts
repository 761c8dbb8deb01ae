import type { Mapping, ViewFrame } from './mapping.ts'

/** How a view turns its features into true size. */
export interface ViewMapping {
  mapping: Mapping
  frame: ViewFrame
  /** Standard uncertainty of where a drawn feature lies, mm in true size. */
  draughting: number
}
