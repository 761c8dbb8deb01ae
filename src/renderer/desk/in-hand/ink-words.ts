import type { Ink } from '../../../core/imaging/index.ts'

/**
 * What the switch for strokes in the other ink is called, and what it is for.
 * @param ofSheet the ink of the sheet, null where that is not known; negative: whether it is looked at as its negative
 */
export function otherInkWords(ofSheet: Ink | null, negative: boolean): { label: string; note: string } {
  const isSeenLight = (ofSheet === 'light') !== negative
  return isSeenLight
    ? {
        label: 'Dark on light',
        note: 'For dark strokes across a light area. Else the light ones of this sheet are taken, and never the dark between two of them.',
      }
    : {
        label: 'Light on dark',
        note: 'For light strokes across a dark area. Else the dark ones of this sheet are taken, and never the paper between two of them.',
      }
}
