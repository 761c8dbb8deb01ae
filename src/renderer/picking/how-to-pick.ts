import { create } from 'zustand'

/** Which part of a stroke is read, as it is seen on the screen: of a straight one, and of a round one. */
export type StraightSide = 'centre' | 'upper' | 'lower'
export type RoundSide = 'centre' | 'outer' | 'inner'

/** How picks are taken; stays from tool to tool. */
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
