import { create } from 'zustand'
import type { Measure } from '../../../core/job/model/types.ts'
import type { ReferenceKind } from '../../picking/tool.ts'

/** What was worked with last, so that the next pick begins there. */
interface LastUsed {
  /** The view, by its id. */
  view: string | null
  measure: Measure | null
  reference: ReferenceKind | null
}

export const useLastUsed = create<LastUsed>(() => ({ view: null, measure: null, reference: null }))
