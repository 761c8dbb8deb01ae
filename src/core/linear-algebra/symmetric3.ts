/** A symmetric 3 × 3 matrix by its upper triangle: xx, xy, xz, yy, yz, zz. */
export type Symmetric3 = readonly [number, number, number, number, number, number]

/** The inverse of a symmetric 3 × 3 matrix, or null when it is singular to working precision. */
export function invertSymmetric3([a, b, c, d, e, f]: Symmetric3): Symmetric3 | null {
  const A = d * f - e * e
  const B = c * e - b * f
  const C = b * e - c * d
  const determinant = a * A + b * B + c * C
  if (!(Math.abs(determinant) > 1e-14 * Math.abs(a * d * f))) return null
  return [
    A / determinant,
    B / determinant,
    C / determinant,
    (a * f - c * c) / determinant,
    (b * c - a * e) / determinant,
    (a * d - b * b) / determinant,
  ]
}
