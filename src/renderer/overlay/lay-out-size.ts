import { type Pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { type LetteredBox, readable } from './geometry-on-screen.ts'
import type { Item } from './items.ts'
import type { Laid, Stroke } from './laid.ts'

/** Screen units, CSS pixels. */
const FIRST_LANE = 18
const NEXT_LANE = 20
const GAP = 3
const BEYOND = 5
const ARROW = 9
/** Below this a dimension line has no room for lettering between its arrows, nor anybody for reading it beside. */
const LETTERED_FROM = 26
const PADDING = 5

/** How wide and high a written figure is set. */
export type Lettering = (text: string) => { width: number; height: number }

export type SizeItem = Item & { kind: 'size' }
export type OnScreen = (pixel: Pixel) => Screen

/** A size as a draughtsman sets it: dimension line, witness lines, arrowheads and the figure. */
export function layOutSize(size: SizeItem, at: OnScreen, lettering: Lettering): Laid {
  switch (size.span.kind) {
    case 'straight':
      return straight(size, size.span, at, lettering)
    case 'angle':
      return arc(size, size.span, at, lettering)
    case 'path':
      return alongPath(size, size.span, at, lettering)
  }
}

const wordOf = ({ wrong }: SizeItem, at: Screen): Laid['word'] => (wrong === '' ? null : { at, text: wrong })

function straight(
  size: SizeItem,
  span: SizeItem['span'] & { kind: 'straight' },
  at: OnScreen,
  lettering: Lettering,
): Laid {
  const [p, q] = [at(span.from), at(span.to)]
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
  const length = Math.hypot(dx, dy)
  const [ux, uy] = length === 0 ? [1, 0] : [dx / length, dy / length]
  const [nx, ny] = away(screen(-uy, ux), p, q, size.inside === null ? null : at(size.inside))
  const off = span.offset ? FIRST_LANE + NEXT_LANE * size.lane : 0
  const moved = ([x, y]: Screen, by: number): Screen => screen(x + nx * by, y + ny * by)
  const [a, b] = [moved(p, off), moved(q, off)]
  const witness: Stroke[] = span.offset
    ? [p, q].map((end) => ({
        points: [moved(end, GAP), moved(end, off + BEYOND)],
        line: 'full' as const,
        fine: true,
      }))
    : []
  const angle = Math.atan2(uy, ux)
  const { width, height } = lettering(size.text)
  const lettered = size.text !== '' && (size.chosen || length >= LETTERED_FROM)
  const inside = length >= width + 2 * (ARROW + PADDING)
  const outwards = length < 2.5 * ARROW
  const from = outwards ? -1 : 1
  const arrows = [
    ...(span.arrows === 'both' ? [{ tip: a, angle: outwards ? angle : angle + Math.PI }] : []),
    { tip: b, angle: outwards ? angle + Math.PI : angle },
  ]
  const along = (t: number): Screen => screen(a[0] + ux * t, a[1] + uy * t)
  const tail = outwards ? 2 * ARROW : 0
  const beyond = length + tail + PADDING + width / 2
  const centre = inside ? along(length / 2) : along(beyond)
  const figure: Laid['figure'] = lettered
    ? { centre, angle: readable(angle), width: width + 2 * GAP, height, text: size.text }
    : null
  const end = figure !== null && !inside ? length + tail + PADDING - GAP : length + tail
  const strokes: Stroke[] = [
    ...witness,
    ...(figure !== null && inside
      ? [
          { points: [along(0), along((length - width) / 2 - GAP)], line: size.line },
          { points: [along((length + width) / 2 + GAP), along(length)], line: size.line },
        ]
      : [{ points: [along(from < 0 && span.arrows === 'both' ? -tail : 0), along(end)], line: size.line }]),
  ]
  return { item: size, strokes, arrows, figure, title: null, word: wordOf(size, moved(b, 8)) }
}

/** The side of a dimension line that leads out of its view; upwards or to the left when that is not known. */
function away([x, y]: Screen, p: Screen, q: Screen, inside: Screen | null): Screen {
  const out =
    inside === null ? -(x + 2 * y) : x * ((p[0] + q[0]) / 2 - inside[0]) + y * ((p[1] + q[1]) / 2 - inside[1])
  return out >= 0 ? screen(x, y) : screen(-x, -y)
}

const LEAST_ARC = 30
const LARGEST_ARC = 110
const STEPS = 24

function arc(
  size: SizeItem,
  span: SizeItem['span'] & { kind: 'angle' },
  at: OnScreen,
  lettering: Lettering,
): Laid {
  const vertex = at(span.vertex)
  const [s, t] = span.sides.map((ends) => sideOnScreen(vertex, ends.map(at))) as [Side, Side]
  const radius = arcRadius(s, t)
  const sweep = Math.atan2(Math.sin(t.angle - s.angle), Math.cos(t.angle - s.angle))
  const on = (share: number, r = radius): Screen =>
    screen(
      vertex[0] + r * Math.cos(s.angle + share * sweep),
      vertex[1] + r * Math.sin(s.angle + share * sweep),
    )
  const points = Array.from({ length: STEPS + 1 }, (_, i) => on(i / STEPS))
  const sign = Math.sign(sweep) || 1
  const { width, height } = lettering(size.text)
  const figure: Laid['figure'] =
    size.text === ''
      ? null
      : { centre: on(0.5, radius + 6 + width / 2), angle: 0, width: width + 2 * GAP, height, text: size.text }
  /** From the line that was picked on to the arc, where it does not reach there. */
  const onward = ({ near, far }: Side, share: number): Stroke[] => {
    const [from, to] = radius > far ? [far, radius + BEYOND] : [radius - BEYOND, near]
    return to > from ? [{ points: [on(share, from), on(share, to)], line: 'full', fine: true }] : []
  }
  return {
    item: size,
    strokes: [...onward(s, 0), ...onward(t, 1), { points, line: size.line }],
    arrows: [
      { tip: on(0), angle: s.angle - (sign * Math.PI) / 2 },
      { tip: on(1), angle: t.angle + (sign * Math.PI) / 2 },
    ],
    figure,
    title: null,
    word: wordOf(size, on(1, radius + 8)),
  }
}

/** One side of an angle as seen from its vertex. */
interface Side {
  angle: number
  near: number
  far: number
}

function sideOnScreen([vx, vy]: Screen, ends: readonly Screen[]): Side {
  const [near = 0, far = 1] = ends.map(([x, y]) => Math.hypot(x - vx, y - vy))
  const [ex, ey] = ends.at(-1) ?? [vx + 1, vy]
  return { angle: Math.atan2(ey - vy, ex - vx), near, far }
}

/** Near the vertex where both lines reach there, else across the middle of the shorter line. */
function arcRadius(s: Side, t: Side): number {
  const near = Math.max(s.near, t.near)
  const far = Math.min(s.far, t.far)
  const within = Math.min(LARGEST_ARC, 0.8 * far)
  return Math.max(LEAST_ARC, near <= within ? within : (near + Math.max(near, far)) / 2)
}

function alongPath(
  size: SizeItem,
  span: SizeItem['span'] & { kind: 'path' },
  at: OnScreen,
  lettering: Lettering,
): Laid {
  const points = span.pixels.map(at)
  const { width, height } = lettering(size.text)
  const centre: Screen = span.closed
    ? screen(
        points.reduce((sum, [x]) => sum + x, 0) / points.length,
        points.reduce((sum, [, y]) => sum + y, 0) / points.length,
      )
    : (points[Math.floor(points.length / 2)] ?? screen(0, 0))
  const box: LetteredBox = { centre, angle: 0, width: width + 2 * GAP, height }
  return {
    item: size,
    strokes: [{ points, line: size.line, closed: span.closed }],
    arrows: [],
    figure: size.text === '' ? null : { ...box, text: size.text },
    title: null,
    word: wordOf(size, screen(centre[0], centre[1] + height)),
  }
}
