import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import type { Measure } from '../../core/job/model/types.ts'
import { type MarkShape, mean } from './shape.ts'

/** What a size is shown between, in pixels of the scan. */
export type SizeSpan =
  /** offset: the dimension line stands off what it measures, on witness lines. */
  | { kind: 'straight'; from: Pixel; to: Pixel; offset: boolean; arrows: 'both' | 'end' }
  /** Each side from its nearer to its farther end as seen from the vertex. */
  | { kind: 'angle'; vertex: Pixel; sides: [[Pixel, Pixel], [Pixel, Pixel]] }
  | { kind: 'path'; pixels: readonly Pixel[]; closed: boolean }

/** Directions that diameters and radii are drawn in, so that circles about one centre stay apart. Radians. */
const DIAMETER_AT = -Math.PI / 4
const RADIUS_AT = -Math.PI / 6

/** Where the size of a measure is shown; null when its marks do not suit it. */
export function spanOf(measure: Measure, shapes: readonly MarkShape[]): SizeSpan | null {
  const [a, b] = shapes
  if (a === undefined) return null
  switch (measure) {
    case 'distance':
    case 'centres': {
      if (b === undefined) return null
      const [from, to] = [middle(a), middle(b)]
      return { kind: 'straight', from, to, offset: measure === 'distance', arrows: 'both' }
    }
    case 'slot-width':
    case 'slot-length':
      return b === undefined ? null : ofSlot(measure, a, b)
    case 'spacing':
      return b === undefined ? null : spacing(a, b)
    case 'diameter':
    case 'radius': {
      if (a.kind !== 'circle') return null
      const { centre, radius, arc } = a
      const whole = measure === 'diameter'
      // That of an arc ends in its middle, and not where nothing is drawn.
      const at = arc !== undefined ? (arc[0] + arc[1]) / 2 : whole ? DIAMETER_AT : RADIUS_AT
      const [dx, dy] = [radius * Math.cos(at), radius * Math.sin(at)]
      const from: Pixel = whole ? pixel(centre[0] - dx, centre[1] - dy) : centre
      const to: Pixel = pixel(centre[0] + dx, centre[1] + dy)
      return { kind: 'straight', from, to, offset: false, arrows: whole ? 'both' : 'end' }
    }
    case 'angle':
      return b === undefined ? null : angle(a, b)
    case 'run':
    case 'area':
      return a.kind === 'path' ? { kind: 'path', pixels: a.pixels, closed: a.closed } : null
  }
}

export function middle(shape: MarkShape): Pixel {
  switch (shape.kind) {
    case 'point':
      return shape.at
    case 'circle':
      return shape.centre
    case 'segment':
      return mean(shape.ends)
    case 'path':
      return mean(shape.pixels)
  }
}

/** Across the middle of a slot, or along it from the top of one end to that of the other. */
function ofSlot(measure: 'slot-width' | 'slot-length', a: MarkShape, b: MarkShape): SizeSpan | null {
  if (a.kind !== 'circle' || b.kind !== 'circle') return null
  const [dx, dy] = [b.centre[0] - a.centre[0], b.centre[1] - a.centre[1]]
  const length = Math.hypot(dx, dy)
  if (length === 0) return null
  const [ux, uy] = [dx / length, dy / length]
  if (measure === 'slot-length') {
    const from = pixel(a.centre[0] - a.radius * ux, a.centre[1] - a.radius * uy)
    const to = pixel(b.centre[0] + b.radius * ux, b.centre[1] + b.radius * uy)
    return { kind: 'straight', from, to, offset: true, arrows: 'both' }
  }
  const half = (a.radius + b.radius) / 2
  const [x, y] = mean([a.centre, b.centre])
  const [from, to] = [pixel(x + half * uy, y - half * ux), pixel(x - half * uy, y + half * ux)]
  return { kind: 'straight', from, to, offset: false, arrows: 'both' }
}

/** From the middle of the second mark square to the first, or the other way when only the second is a line. */
function spacing(a: MarkShape, b: MarkShape): SizeSpan | null {
  const [line, other] = a.kind === 'segment' ? [a, b] : [b, a]
  if (line.kind !== 'segment') return null
  const [[x0, y0], [x1, y1]] = line.ends
  const from = middle(other)
  const [dx, dy] = [x1 - x0, y1 - y0]
  const t = ((from[0] - x0) * dx + (from[1] - y0) * dy) / (dx * dx + dy * dy)
  const to: Pixel = pixel(x0 + t * dx, y0 + t * dy)
  return { kind: 'straight', from, to, offset: false, arrows: 'both' }
}

function angle(a: MarkShape, b: MarkShape): SizeSpan | null {
  if (a.kind !== 'segment' || b.kind !== 'segment') return null
  const [[ax, ay], [bx, by]] = a.ends
  const [[cx, cy], [dx, dy]] = b.ends
  const [ux, uy, vx, vy] = [bx - ax, by - ay, dx - cx, dy - cy]
  const cross = ux * vy - uy * vx
  if (Math.abs(cross) < 1e-6 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return null
  const t = ((cx - ax) * vy - (cy - ay) * vx) / cross
  const vertex: Pixel = pixel(ax + t * ux, ay + t * uy)
  const sides: [Side, Side] = [sideOf(vertex, [ux, uy], a.ends), sideOf(vertex, [vx, vy], b.ends)]
  // Vertical angles are equal: where both lines lie behind the vertex, the one that they enclose is shown.
  const turned = sides.every(({ to }) => to <= 0) ? -1 : 1
  return {
    kind: 'angle',
    vertex,
    sides: [endsFrom(vertex, sides[0], turned), endsFrom(vertex, sides[1], turned)],
  }
}

/** A line as seen from a point on it: its direction, and where it begins and ends along that, in pixels. */
interface Side {
  direction: [number, number]
  from: number
  to: number
}

function sideOf(vertex: Pixel, [x, y]: [number, number], ends: readonly [Pixel, Pixel]): Side {
  const length = Math.hypot(x, y)
  const direction: [number, number] = [x / length, y / length]
  const along = ([px, py]: Pixel): number => (px - vertex[0]) * direction[0] + (py - vertex[1]) * direction[1]
  return { direction, from: along(ends[0]), to: along(ends[1]) }
}

function endsFrom(vertex: Pixel, { direction: [x, y], from, to }: Side, turned: number): [Pixel, Pixel] {
  const [s, t] = [turned * from, turned * to]
  const at = (far: number): Pixel => pixel(vertex[0] + turned * x * far, vertex[1] + turned * y * far)
  return [at(Math.max(0, Math.min(s, t))), at(Math.max(1, s, t))]
}
