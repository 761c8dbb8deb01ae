/** A point of the plane, [x, y]. */
export type Pt = readonly [x: number, y: number]

export const add = (a: Pt, b: Pt): Pt => [a[0] + b[0], a[1] + b[1]]
export const sub = (a: Pt, b: Pt): Pt => [a[0] - b[0], a[1] - b[1]]
export const times = (a: Pt, k: number): Pt => [a[0] * k, a[1] * k]
export const lerp = (a: Pt, b: Pt, t: number): Pt => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
export const lengthOf = (a: Pt): number => Math.hypot(a[0], a[1])
export const unit = (a: Pt): Pt => times(a, 1 / lengthOf(a))
/** A quarter turn, from x towards y. */
export const quarter = (a: Pt): Pt => [-a[1], a[0]]
/** At an angle from the x axis towards the y axis, radians. */
export const polar = (centre: Pt, radius: number, angle: number): Pt => [
  centre[0] + radius * Math.cos(angle),
  centre[1] + radius * Math.sin(angle),
]

/** Where the lines through a, b and through c, d cross. */
export function crossing(a: Pt, b: Pt, c: Pt, d: Pt): Pt {
  const r = sub(b, a)
  const s = sub(d, c)
  const det = r[0] * s[1] - r[1] * s[0]
  if (Math.abs(det) < 1e-12) throw new Error('Two parallel lines were asked to cross.')
  const t = ((c[0] - a[0]) * s[1] - (c[1] - a[1]) * s[0]) / det
  return lerp(a, b, t)
}
