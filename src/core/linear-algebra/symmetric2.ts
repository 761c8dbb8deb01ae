/** A symmetric 2 × 2 matrix by its upper triangle: xx, xy, yy. */
export type Symmetric2 = readonly [xx: number, xy: number, yy: number]

/** One axis of the ellipse that a symmetric matrix stands for. */
export interface Axis {
  /** Eigenvalue. */
  value: number
  /** Unit eigenvector. */
  vector: readonly [x: number, y: number]
}

/** Both axes of a symmetric 2 × 2 matrix, the greater first; along x and y where it is diagonal. */
export function symmetric2([xx, xy, yy]: Symmetric2): [Axis, Axis] {
  const angle = xy === 0 ? (xx >= yy ? 0 : Math.PI / 2) : 0.5 * Math.atan2(2 * xy, xx - yy)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const mean = (xx + yy) / 2
  const half = Math.hypot((xx - yy) / 2, xy)
  return [
    { value: mean + half, vector: [c, s] },
    { value: mean - half, vector: [-s, c] },
  ]
}
