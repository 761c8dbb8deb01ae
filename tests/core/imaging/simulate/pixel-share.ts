import statistics from 'jstat'

const { jStat } = statistics

const STEPS = 512
const REACH = 7
const TABLE = Float64Array.from({ length: 2 * REACH * STEPS + 2 }, (_, i) =>
  jStat.normal.cdf(i / STEPS - REACH, 0, 1),
)

/** Cumulative standard normal distribution, by a table of jstat's; to 5e-7. */
export function cumulative(z: number): number {
  if (z <= -REACH) return 0
  if (z >= REACH) return 1
  const at = (z + REACH) * STEPS
  const i = Math.floor(at)
  const low = TABLE[i] as number
  return low + (at - i) * ((TABLE[i + 1] as number) - low)
}

interface Rule {
  nodes: Float64Array
  /** Of each pair of nodes, the first node's row by row. */
  weights: Float64Array
}

/** Gauss–Legendre on −½ … ½, 4 and 6 nodes: Abramowitz & Stegun (1964), table 25.4. */
const FOUR: Rule = halved([0.861136311594053, 0.339981043584856], [0.347854845137454, 0.652145154862546])
const SIX: Rule = halved(
  [0.932469514203152, 0.661209386466265, 0.238619186083197],
  [0.17132449237917, 0.360761573048139, 0.467913934572691],
)

function halved(nodes: readonly number[], weights: readonly number[]): Rule {
  const all = [...weights, ...weights].map((w) => w / 2)
  return {
    nodes: Float64Array.from([...nodes.map((x) => -x / 2), ...nodes.map((x) => x / 2)]),
    weights: Float64Array.from(all.flatMap((one) => all.map((other) => one * other))),
  }
}

/**
 * The share of a pixel that a half-plane covers: exact area, or its mean after Gaussian blur.
 * @param depth of the pixel's centre inside the half-plane, pixels; below 0 outside
 * @param across unit vector across the edge
 * @param blur standard deviation, pixels; 0 or at least 0.25
 */
export function pixelShare(depth: number, [nx, ny]: readonly [number, number], blur: number): number {
  const wide = Math.max(Math.abs(nx), Math.abs(ny))
  const narrow = Math.min(Math.abs(nx), Math.abs(ny))
  const far = (wide + narrow) / 2 + 6 * blur
  if (depth >= far) return 1
  if (depth <= -far) return 0
  if (blur === 0) return depth > 0 ? 1 - corner(-depth, wide, narrow) : corner(depth, wide, narrow)
  const { nodes, weights } = blur < 0.5 ? SIX : FOUR
  let sum = 0
  let pair = 0
  for (let i = 0; i < nodes.length; i++) {
    const middle = depth + wide * (nodes[i] as number)
    for (let j = 0; j < nodes.length; j++) {
      const at = middle + narrow * (nodes[j] as number)
      sum += (weights[pair++] as number) * cumulative(at / blur)
    }
  }
  return sum
}

/** Area of a unit square inside an edge whose depth at the square's centre is 0 or less. */
function corner(depth: number, wide: number, narrow: number): number {
  const beyond = depth + (wide + narrow) / 2
  if (beyond <= 0) return 0
  if (beyond < narrow) return (beyond * beyond) / (2 * wide * narrow)
  return (beyond - narrow / 2) / wide
}
