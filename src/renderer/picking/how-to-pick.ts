import { create } from 'zustand'
import type { MarkNeed } from '../../core/job/model/mark-needs.ts'

/** Which part of a stroke is read, as it is seen on the screen: of a straight one, and of a round one. */
export type StraightSide = 'centre' | 'upper' | 'lower'
export type RoundSide = 'centre' | 'outer' | 'inner'

/** How picks are taken; stays from tool to tool, but for which part of a stroke is read. */
export interface HowToPick {
  /** Exactly where it was pointed at, and not on the stroke there. */
  byHand: boolean
  straight: StraightSide
  round: RoundSide
  /** Whether a point is taken where strokes cross, where they do within reach. */
  crossings: boolean
  /** Whether strokes of the other ink than the sheet's are meant: white ones across a black area, dark ones on a blueprint. */
  otherInk: boolean
}

export const useHowToPick = create<HowToPick>(() => ({
  byHand: false,
  straight: 'centre',
  round: 'centre',
  crossings: true,
  otherInk: false,
}))

/** The edge of a stroke that is read in place of its middle; null where the middle is, or nothing with edges is wanted. */
export function edgeWanted(need: MarkNeed | null, { straight, round }: HowToPick): string | null {
  if (need === 'circle') return round === 'centre' ? null : `${round} edge`
  if ((need !== 'point' && need !== 'line') || straight === 'centre') return null
  return straight === 'upper' ? 'upper or left edge' : 'lower or right edge'
}

/** The middle of strokes is read again: an edge that is wanted for one size is the wrong one for the next. */
export function readMiddles(): void {
  useHowToPick.setState({ straight: 'centre', round: 'centre' })
}
