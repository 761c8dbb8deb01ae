import { createStore } from 'zustand/vanilla'
import type { Pixel } from '../../core/geometry/frames.ts'

/** Where the pointer or the keyboard's cross is on the sheet. Apart from the bench, so that it renders nothing. */
export interface PointerPlace {
  /** In pixels of the scan; null when it is nowhere on the sheet. */
  pixel: Pixel | null
  by: 'pointer' | 'cross'
  /** Whether the key is held by which a pick is exactly where it is, and no stroke is looked for. */
  byHand: boolean
  /** The old mark that lies there and could stand for what is wanted. */
  near: string | null
  /** Whether the key is held by which a pick takes that one. */
  takesOld: boolean
  /** Where a drag began by which picks are made, pixels of the scan; null while none is. */
  dragFrom: Pixel | null
  /** What plain arrow keys move: the newest pick, or the cross. */
  arrows: 'pick' | 'cross'
}

export const pointer = createStore<PointerPlace>(() => ({
  pixel: null,
  by: 'pointer',
  byHand: false,
  near: null,
  takesOld: false,
  dragFrom: null,
  arrows: 'cross',
}))
