/** Mean and experimental standard deviation of repeated observations. */
export interface Repeated {
  mean: number
  /** Experimental standard deviation of one observation; 0 for a single one. */
  s: number
  n: number
  /** Degrees of freedom of s: n − 1. */
  dof: number
}

/**
 * @param values one or more observations
 * Source: JCGM 100:2008, 4.2.1 to 4.2.3 (eq. 3 and 4).
 */
export function repeatedObservations(values: readonly number[]): Repeated {
  const n = values.length
  const mean = values.reduce((sum, v) => sum + v, 0) / n
  const squares = values.reduce((sum, v) => sum + (v - mean) ** 2, 0)
  return { mean, s: n > 1 ? Math.sqrt(squares / (n - 1)) : 0, n, dof: n - 1 }
}

/** Mean of vectors of one length. */
export function meanOf(vectors: readonly (readonly number[])[]): number[] {
  const n = vectors.length
  return (vectors[0] ?? []).map((_, i) => vectors.reduce((sum, vector) => sum + (vector[i] ?? 0), 0) / n)
}
