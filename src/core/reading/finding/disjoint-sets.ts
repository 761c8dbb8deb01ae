/** Numbers that are joined, and so belong together, each by the number of one that stands for all. */
export interface DisjointSets {
  readonly rootOf: (i: number) => number
  readonly join: (i: number, j: number) => void
}

/** So many numbers from 0 on, each by itself. */
export function disjointSets(count: number): DisjointSets {
  const root = Int32Array.from({ length: count }, (_, i) => i)
  const rootOf = (i: number): number => {
    let at = i
    while (root[at] !== at) {
      root[at] = root[root[at] ?? at] ?? at
      at = root[at] ?? at
    }
    return at
  }
  const join = (i: number, j: number): void => {
    root[rootOf(i)] = rootOf(j)
  }
  return { rootOf, join }
}
