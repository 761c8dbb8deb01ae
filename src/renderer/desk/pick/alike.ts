import type { Tool } from '../../picking/tool.ts'
import type { NewDimensionDraft } from './new-dimension.tsx'

const NOTHING: NewDimensionDraft = { label: '', name: null, printed: '', count: null }

let left: { by: string; draft: NewDimensionDraft } | null = null

/** What is measured with a tool, in whatever view. */
const measureBy = (tool: Tool): string => JSON.stringify({ ...tool, view: null })

/** Leaves what the next dimension is to begin with that is measured alike. */
export function leaveAlike(tool: Tool, draft: NewDimensionDraft): void {
  left = { by: measureBy(tool), draft }
}

/** What a new dimension begins with. It is left for one only: what comes after that begins empty. */
export function takeAlike(tool: Tool): NewDimensionDraft {
  const taken = left
  left = null
  return taken?.by === measureBy(tool) ? taken.draft : NOTHING
}
