const HARMONICS = 24

/**
 * Variance of the mean place of one edge of a scan of one bit, pixels² across the edge. Thresholding rounds an edge to
 * whole pixels along the axis nearer across, once in each row or column that it passes; the error is a sawtooth of its
 * place, which moves on by the slope from one to the next: Σ 1/(2π²k²)·(sin(πkns)/(n·sin(πks)))², Dirichlet's kernel. At
 * slopes near 0, 1, 1/2 … the same error repeats and nothing averages out.
 * @param length along the edge, pixels
 * @param across unit vector across the edge
 */
export function bilevelEdgeVariance(length: number, across: readonly [number, number]): number {
  const major = Math.max(Math.abs(across[0]), Math.abs(across[1]))
  const slope = Math.min(Math.abs(across[0]), Math.abs(across[1])) / major
  const rows = Math.max(1, length * major)
  let sum = 0
  for (let k = 1; k <= HARMONICS; k++) {
    sum += dirichletShare(rows, k * slope) / (2 * Math.PI * Math.PI * k * k)
  }
  return sum * major * major
}

/** The share of a harmonic's variance that is left in the mean of so many rows, in each of which it moves on by so much. */
export function dirichletShare(rows: number, move: number): number {
  const x = Math.PI * rows * Math.abs(move - Math.round(move))
  const sinc = x < 1e-6 ? 1 : Math.sin(x) / x
  return x < 1 ? sinc * sinc : Math.max(sinc * sinc, 0.5 / (x * x))
}
