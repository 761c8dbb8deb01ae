/** A point of a drawing in its own units: x right, y down. */
export type UserPoint = readonly [x: number, y: number]

/** x′ = a x + c y + e and y′ = b x + d y + f, in the order that SVG writes them. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number]

export const IDENTITY: Affine = [1, 0, 0, 1, 0, 0]

/** What `inner` and then `outer` does. */
export function compose(outer: Affine, inner: Affine): Affine {
  if (outer === IDENTITY) return inner
  const [a, b, c, d, e, f] = outer
  const [p, q, r, s, t, u] = inner
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f]
}

export function applyAffine(matrix: Affine, point: UserPoint): UserPoint {
  if (matrix === IDENTITY) return point
  const [a, b, c, d, e, f] = matrix
  const [x, y] = point
  return [a * x + c * y + e, b * x + d * y + f]
}

/** By how much lengths are enlarged at most: the larger singular value. */
export const largestStretch = ([a, b, c, d]: Affine): number =>
  (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2
