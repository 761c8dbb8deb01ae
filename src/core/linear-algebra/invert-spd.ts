import * as elements from './elements-unchecked.ts'

const { f64 } = elements

/**
 * Inverse of a small symmetric positive definite matrix, row by row; null when it is singular to working precision.
 * Gauss–Jordan without exchange of rows, after scaling to a unit diagonal.
 */
export function invertSpd(matrix: Float64Array, n: number): Float64Array | null {
  const scale = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const d = f64(matrix, i * n + i)
    if (!(d > 0)) return null
    scale[i] = 1 / Math.sqrt(d)
  }
  const a = scaled(matrix, scale)
  for (let p = 0; p < n; p++) {
    const pivot = f64(a, p * n + p)
    if (!(pivot > 1e-12)) return null
    a[p * n + p] = 1
    for (let j = 0; j < n; j++) a[p * n + j] = f64(a, p * n + j) / pivot
    for (let i = 0; i < n; i++) {
      if (i === p) continue
      const f = f64(a, i * n + p)
      a[i * n + p] = 0
      for (let j = 0; j < n; j++) a[i * n + j] = f64(a, i * n + j) - f * f64(a, p * n + j)
    }
  }
  return scaled(a, scale)
}

/** Each element by the scales of its row and its column. */
function scaled(matrix: Float64Array, scale: Float64Array): Float64Array {
  const n = scale.length
  const out = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) out[i * n + j] = f64(matrix, i * n + j) * f64(scale, i) * f64(scale, j)
  return out
}

/** A square matrix, row by row, times a vector. */
export function timesVector(matrix: Float64Array, vector: Float64Array): Float64Array {
  const n = vector.length
  const out = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    let sum = 0
    for (let j = 0; j < n; j++) sum += f64(matrix, i * n + j) * f64(vector, j)
    out[i] = sum
  }
  return out
}
