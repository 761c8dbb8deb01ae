/** How a sheet is looked at. Picks are in pixels of the untouched scan whatever is set here. */
export interface Aids {
  /** Quarter turns and less, degrees, clockwise. */
  turn: number
  mirror: boolean
  /** Light for dark: a blueprint is read as dark on light. */
  negative: boolean
  /** 1: as it is. */
  contrast: number
  /** Divide by the ground of the sheet, so that stains and folds fade. */
  lift: boolean
}

export const PLAIN: Aids = { turn: 0, mirror: false, negative: false, contrast: 1, lift: false }
