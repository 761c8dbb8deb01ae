import { called } from '../../job/ids/label.ts'
import type { Mark } from '../../job/model/types.ts'
import { reason } from '../../words/core-words.ts'
import type { AnyReason } from '../../words/reason.ts'

export const READ_AT_EDGES = 'evidence.read-at-edges'

/** Tells which of some marks lie on an edge of their stroke and not along its middle; null where all lie in the middle. */
export function readAtEdges(marks: readonly Mark[]): AnyReason | null {
  const edges = marks.flatMap((mark) => {
    const { kind, stroke } = mark
    if (stroke === undefined || stroke.reading === 'centre') return []
    // Round strokes are followed clockwise as the scan is seen, so that their right is inside.
    const edge = kind !== 'circle' ? 'edge' : stroke.reading === 'right' ? 'inner edge' : 'outer edge'
    return [{ of: called('mark', mark), edge } as const]
  })
  return edges.length === 0 ? null : reason(READ_AT_EDGES, { edges })
}
