import { type Degrees, degrees } from '../../core/geometry/angle-units.ts'

/** How a sheet is looked at. Picks are in pixels of the untouched scan whatever is set here. */
export interface Aids {
  /** Quarter turns and less, clockwise. */
  turn: Degrees
  mirror: boolean
  /** Light for dark: a blueprint is read as dark on light. */
  negative: boolean
  /** 1: as it is. */
  contrast: number
  /** Divide by the ground of the sheet, so that stains and folds fade. */
  lift: boolean
}

export const PLAIN: Aids = { turn: degrees(0), mirror: false, negative: false, contrast: 1, lift: false }
