import { type Point, type PointsOf, type Screen, screen } from '../../core/geometry/frames.ts'

/** A polyline so far to the left of itself as it runs, y down: for the second pen of a double line. */
export function beside(points: readonly Screen[], off: number): Screen[] {
  return points.map((point, i) => {
    const before = points[Math.max(0, i - 1)] as Screen
    const after = points[Math.min(points.length - 1, i + 1)] as Screen
    const [dx, dy] = [after[0] - before[0], after[1] - before[1]]
    const length = Math.hypot(dx, dy) || 1
    return screen(point[0] + (off * dy) / length, point[1] - (off * dx) / length)
  })
}

/** How far a place is from the nearest stretch of a polyline, in the units of their frame. */
export function farFrom<P extends Point>([x, y]: P, points: PointsOf<P>): number {
  let least = Infinity
  points.forEach(([ax, ay], i) => {
    const [bx, by] = points[i + 1] ?? [ax, ay]
    const [dx, dy] = [bx - ax, by - ay]
    const squared = dx * dx + dy * dy
    const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared))
    least = Math.min(least, Math.hypot(x - ax - t * dx, y - ay - t * dy))
  })
  return least
}

/** A line of lettering that may be turned. */
export interface LetteredBox {
  centre: Screen
  /** Radians. */
  angle: number
  width: number
  height: number
}

/** The corners of a turned box. */
export function boxCorners({ centre: [x, y], angle, width, height }: LetteredBox): Screen[] {
  const [cos, sin] = [Math.cos(angle) / 2, Math.sin(angle) / 2]
  const corner = (a: number, b: number): Screen => screen(x + a * cos - b * sin, y + a * sin + b * cos)
  return [corner(-width, -height), corner(width, -height), corner(width, height), corner(-width, height)]
}

/** Whether two turned boxes touch: no line parallel to a side of either parts them. */
export function collide(p: LetteredBox, q: LetteredBox): boolean {
  // Most boxes are far apart, which is told without their corners.
  const reach = (p.width + p.height + q.width + q.height) / 2
  if (Math.abs(p.centre[0] - q.centre[0]) > reach || Math.abs(p.centre[1] - q.centre[1]) > reach) return false
  const [a, b] = [boxCorners(p), boxCorners(q)]
  return [p.angle, p.angle + Math.PI / 2, q.angle, q.angle + Math.PI / 2].every((angle) => {
    const [x, y] = [Math.cos(angle), Math.sin(angle)]
    const onto = (corners: Screen[]): number[] => corners.map((corner) => corner[0] * x + corner[1] * y)
    const [s, t] = [onto(a), onto(b)]
    return Math.max(...s) > Math.min(...t) && Math.max(...t) > Math.min(...s)
  })
}

/** An angle at which lettering along a line is read from below or from the right, as drawings have it. */
export function readable(angle: number): number {
  const a = Math.atan2(Math.sin(angle), Math.cos(angle))
  if (a > Math.PI / 2 - 0.02) return a - Math.PI
  return a < -Math.PI / 2 - 0.02 ? a + Math.PI : a
}
