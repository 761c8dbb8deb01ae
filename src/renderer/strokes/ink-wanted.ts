import type { Ink } from '../../core/imaging/index.ts'

export const otherInk = (ink: Ink): Ink => (ink === 'dark' ? 'light' : 'dark')

/**
 * Which strokes are looked for: in the ink of the sheet, or in the other where that is asked for.
 * @param ofSheet null where the sheet does not show it: then the other is other than that of most drawings
 * @returns what of it a search is told: nothing where the scan about the pick is to tell
 */
export function inkWanted(ofSheet: Ink | null, other: boolean): { ink?: Ink } {
  if (other) return { ink: otherInk(ofSheet ?? 'dark') }
  return ofSheet === null ? {} : { ink: ofSheet }
}
