import type { Measure } from '../../../core/job/model/types.ts'
import type { NewDimensionDraft } from './new-dimension.tsx'

const NOTHING: NewDimensionDraft = { label: '', name: null, printed: '', count: null }

let left: { measure: Measure; draft: NewDimensionDraft } | null = null

/** Leaves what the next dimension is to begin with that is measured alike. */
export function leaveAlike(measure: Measure, draft: NewDimensionDraft): void {
  left = { measure, draft }
}

/** What a new dimension begins with. It is left for one only: what comes after that begins empty. */
export function takeAlike(measure: Measure): NewDimensionDraft {
  const taken = left
  left = null
  return taken?.measure === measure ? taken.draft : NOTHING
}
