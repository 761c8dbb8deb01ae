import type { NewDimensionDraft } from './new-dimension.tsx'

const NOTHING: NewDimensionDraft = { label: '', name: null, printed: '', count: null }

let next: NewDimensionDraft = NOTHING

/** Leaves what the next dimension is to begin with, as one that is like the one just kept. */
export function leaveAlike(draft: NewDimensionDraft): void {
  next = draft
}

/** What a new dimension begins with. It is left for one only: what comes after that begins empty. */
export function takeAlike(): NewDimensionDraft {
  const taken = next
  next = NOTHING
  return taken
}
