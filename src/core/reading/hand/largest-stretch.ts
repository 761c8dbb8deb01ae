/** Rounds; the largest stretch stands out at once where no trait is negative. */
const ROUNDS = 8
/** What rounds so few may still fall short by. */
const SHORT = 1.05

/**
 * The largest eigenvalue of the sum of rows' outer products, or a little more: the most by which the squares of what the
 * rows give together exceed those of what they are given. By the power method.
 */
export function largestStretch(rows: readonly Float32Array[]): number {
  const count = rows[0]?.length ?? 0
  let way = new Float64Array(count).fill(1 / Math.sqrt(Math.max(1, count)))
  let stretch = 0
  for (let round = 0; round < ROUNDS; round++) {
    const next = new Float64Array(count)
    for (const row of rows) {
      let along = 0
      for (let i = 0; i < count; i++) along += (row[i] ?? 0) * (way[i] ?? 0)
      for (let i = 0; i < count; i++) next[i] = (next[i] ?? 0) + along * (row[i] ?? 0)
    }
    stretch = Math.hypot(...next)
    if (stretch === 0) return 0
    way = next.map((v) => v / stretch)
  }
  return stretch * SHORT
}
