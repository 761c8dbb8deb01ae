import type { Tool } from '../../picking/tool.ts'

let left: { by: string; draft: unknown } | null = null

/** What is measured with a tool, in whatever view. */
const measureBy = (tool: Tool): string => JSON.stringify({ ...tool, view: null })

/** Leaves what the next is to begin with that is measured alike. */
export function leaveAlike<D>(tool: Tool, draft: D): void {
  left = { by: measureBy(tool), draft }
}

/**
 * What is measured begins with what was left by the same tool, and else with nothing. It is left for one only: what comes
 * after that begins empty.
 */
export function takeAlike<D>(tool: Tool, nothing: D): D {
  const taken = left
  left = null
  // One tool has one form, and so one kind of draft.
  return taken?.by === measureBy(tool) ? (taken.draft as D) : nothing
}
