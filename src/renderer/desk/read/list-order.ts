import { create } from 'zustand'
import type { FoundOrder } from '../../reading/found-figures.ts'

/** How the figures of sheets are gone through, for as long as the window is open. */
export const useListOrder = create<{
  order: FoundOrder
  all: boolean
  taking: boolean
  last: Record<string, number>
}>(() => ({
  order: 'doubt',
  /** Whether those that were taken or dismissed are listed as well. */
  all: false,
  /** Whether one of them is being taken, in place of the list. */
  taking: false,
  /** Where the list of each sheet was left, by the number of the figure. */
  last: {},
}))
