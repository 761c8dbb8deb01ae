import type { Edges } from '../glyphs/edges.ts'
import { disjointSets } from './disjoint-sets.ts'

/** Rectangles that belong together, each by the number of one that stands for all. */
export interface Neighbours {
  readonly rootOf: (i: number) => number
}

/** How far near ones may be apart at most, in heights of digits. */
const REACH = 4

/**
 * Joins rectangles that are neighbours, and so all that hang together by that.
 * @param areNeighbours of two, and how far they are apart along the row; less than 0 where they overlap
 */
export function neighboursAmong(
  all: readonly Edges[],
  high: number,
  areNeighbours: (a: Edges, b: Edges, gap: number, i: number, j: number) => boolean,
): Neighbours {
  const { rootOf, join } = disjointSets(all.length)
  const order = [...all.keys()].sort((i, j) => (all[i]?.left ?? 0) - (all[j]?.left ?? 0))
  for (const [at, i] of order.entries()) {
    const a = all[i]
    if (a === undefined) continue
    for (let k = at + 1; k < order.length; k++) {
      const j = order[k] ?? 0
      const b = all[j]
      if (b === undefined || b.left - a.right > REACH * high) break
      if (b.top - a.bottom > REACH * high || a.top - b.bottom > REACH * high) continue
      const gap = Math.max(a.left, b.left) - Math.min(a.right, b.right)
      if (areNeighbours(a, b, gap, i, j)) join(i, j)
    }
  }
  return { rootOf }
}
