import { create } from 'zustand'
import type { ReferenceKind, ToolMeasure } from '../../picking/tool.ts'

/** What was worked with last, so that the next pick begins there. */
interface LastUsed {
  /** The view, by its id. */
  view: string | null
  measure: ToolMeasure | null
  reference: ReferenceKind | null
}

export const useLastUsed = create<LastUsed>(() => ({ view: null, measure: null, reference: null }))
