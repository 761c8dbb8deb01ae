import type { Pt } from './plane.ts'

/** A smooth curve through points (Catmull & Rom 1974), as a polyline; closed when the ends meet. */
export function smoothCurve(points: readonly Pt[], steps = 6): Pt[] {
  const n = points.length
  const first = points[0]
  const last = points[n - 1]
  if (first === undefined || last === undefined || n < 3) return [...points]
  const closed = first[0] === last[0] && first[1] === last[1]
  const at = (i: number): Pt => {
    if (closed) return points[(((i % (n - 1)) + (n - 1)) % (n - 1)) as number] ?? first
    return points[Math.min(Math.max(i, 0), n - 1)] ?? first
  }
  const out: Pt[] = []
  for (let i = 0; i < n - 1; i++) {
    const [p, q, r, s] = [at(i - 1), at(i), at(i + 1), at(i + 2)]
    for (let k = 0; k < steps; k++) {
      const t = k / steps
      const blend = (a: number, b: number, c: number, d: number) =>
        0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t ** 2 + (3 * b - a - 3 * c + d) * t ** 3)
      out.push([blend(p[0], q[0], r[0], s[0]), blend(p[1], q[1], r[1], s[1])])
    }
  }
  out.push(last)
  return out
}
