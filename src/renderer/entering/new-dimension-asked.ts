import { create } from 'zustand'
import type { Measure } from '../../core/job/model/types.ts'

/** What is known of a new dimension before anything is written; nothing of one without a pick. */
export interface DimensionBegun {
  /** As it is lettered. */
  figure?: string
  /** The sheet that it is lettered on, by its id. */
  sheet?: string
  /** The picks that it can be scaled between. */
  scaled?: { view: string; measure: Measure; marks: string[] }
}

export const useNewDimensionAsked = create<{ begun: DimensionBegun | null }>(() => ({ begun: null }))

/** Asks what a new dimension is. */
export const askForDimension = (begun: DimensionBegun = {}): void => useNewDimensionAsked.setState({ begun })

export const endNewDimension = (): void => useNewDimensionAsked.setState({ begun: null })
