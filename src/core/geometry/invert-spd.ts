/**
 * Inverse of a small symmetric positive definite matrix, row by row; null when it is singular to working precision.
 * Gauss–Jordan without exchange of rows, after scaling to a unit diagonal.
 */
export function invertSpd(matrix: ArrayLike<number>, n: number): Float64Array | null {
  const scale = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const d = matrix[i * n + i] as number
    if (!(d > 0)) return null
    scale[i] = 1 / Math.sqrt(d)
  }
  const a = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      a[i * n + j] = (matrix[i * n + j] as number) * (scale[i] as number) * (scale[j] as number)
  for (let p = 0; p < n; p++) {
    const pivot = a[p * n + p] as number
    if (!(pivot > 1e-12)) return null
    a[p * n + p] = 1
    for (let j = 0; j < n; j++) a[p * n + j] = (a[p * n + j] as number) / pivot
    for (let i = 0; i < n; i++) {
      if (i === p) continue
      const f = a[i * n + p] as number
      a[i * n + p] = 0
      for (let j = 0; j < n; j++) a[i * n + j] = (a[i * n + j] as number) - f * (a[p * n + j] as number)
    }
  }
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      a[i * n + j] = (a[i * n + j] as number) * (scale[i] as number) * (scale[j] as number)
  return a
}
