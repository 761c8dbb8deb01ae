import type { Edit } from '../../../core/job/edits/edit.ts'

/** Says what a note is about; nothing when `about` is null. */
export const aboutEdit = (id: string, about: string | null): Edit =>
  about === null ? { do: 'change-note', id, clear: ['about'] } : { do: 'change-note', id, set: { about } }

/** A request is far smaller than the largest that a host takes, bytes. */
const BATCH = 1_000_000

/** Edits that add many things, as few edits as a host takes, each under one name. */
export function inBatches(edits: readonly Edit[], name: string): Edit[] {
  const batches: Edit[][] = []
  let size = Number.POSITIVE_INFINITY
  for (const edit of edits) {
    const own = 2 * JSON.stringify(edit).length
    if (size + own > BATCH) {
      batches.push([])
      size = 0
    }
    batches.at(-1)?.push(edit)
    size += own
  }
  return batches.map((some) => ({ do: 'several', name, edits: some }))
}
