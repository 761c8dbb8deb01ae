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
/** Of what is so short on the screen nobody sees what a figure beside it quotes. */
const LETTERED_FROM = 10
/** A dimension line that is shorter has its arrows outside, pointing at each other. */
const ROOM_FOR_ARROWS = 2.5 * ARROW
const PADDING = 5
/** Between a dimension line and a figure beside it. */
const BESIDE = 3
/** How long the leader to a figure may be, the shorter first. */
const LEADERS = [18, 40] as const

/** How wide and high a written figure is set. */
export type Lettering = (text: string) => { width: number; height: number }

export type SizeItem = Item & { kind: 'size' }
export type OnScreen = (pixel: Pixel) => Screen

/** So many places a figure may have, by what is measured: `layOutSize` takes the number of one, the best first. */
export const placesOf = ({ span }: SizeItem): number => (span.kind === 'straight' ? 10 : 3)

/**
 * A size as a draughtsman sets it: dimension line, witness lines, arrowheads and the figure.
 * @param place which place the figure has, from 0
 */
export function layOutSize(size: SizeItem, at: OnScreen, lettering: Lettering, place = 0): Laid {
  switch (size.span.kind) {
    case 'straight':
      return straight(size, size.span, at, lettering, place)
    case 'angle':
      return arc(size, size.span, at, lettering, place)
    case 'path':
      return alongPath(size, size.span, at, lettering, place)
  }
}

/** Where a figure stands about a straight dimension line: on it, so far beyond one of its ends, or so far beside it. */
type FigurePlace =
  /** at: how far along it, as a share. */
  | { kind: 'on'; at: number }
  | { kind: 'beyond'; end: 'a' | 'b' }
  | { kind: 'beside'; side: 1 | -1; leader: number }

const BEYOND_ENDS: readonly FigurePlace[] = [
  { kind: 'beyond', end: 'b' },
  { kind: 'beyond', end: 'a' },
]
const AT_THE_LINE: readonly FigurePlace[] = [
  { kind: 'beside', side: 1, leader: 0 },
  { kind: 'beside', side: -1, leader: 0 },
]
const ON_LEADERS: readonly FigurePlace[] = LEADERS.flatMap((leader): FigurePlace[] => [
  { kind: 'beside', side: 1, leader },
  { kind: 'beside', side: -1, leader },
])

/** On the line or at it where the figure has room there, else beyond an end; on a leader where all of that is taken. */
const PLACES_INSIDE: readonly FigurePlace[] = [
  { kind: 'on', at: 0.5 },
  ...AT_THE_LINE,
  { kind: 'on', at: 0.25 },
  { kind: 'on', at: 0.75 },
  ...BEYOND_ENDS,
  ...ON_LEADERS,
]
const PLACES_SHORT: readonly FigurePlace[] = [...BEYOND_ENDS, ...AT_THE_LINE, ...ON_LEADERS]

const wordOf = ({ wrong }: SizeItem, at: Screen): Laid['word'] => (wrong === '' ? null : { at, text: wrong })

function straight(
  size: SizeItem,
  span: SizeItem['span'] & { kind: 'straight' },
  at: OnScreen,
  lettering: Lettering,
  place: number,
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
  const plain = !lettered && length < ROOM_FOR_ARROWS
  if (plain) {
    // Far off there is room for what is measured alone.
    const strokes: Stroke[] = [{ points: [p, q], line: size.line }]
    return { item: size, strokes, arrows: [], figure: null, title: null, word: wordOf(size, moved(q, 8)) }
  }
  const inside = length >= width + 2 * (ARROW + PADDING)
  const places = inside ? PLACES_INSIDE : PLACES_SHORT
  const where = places[Math.min(place, places.length - 1)] ?? { kind: 'on', at: 0.5 }
  const outwards = length < ROOM_FOR_ARROWS
  const both = span.arrows === 'both'
  const arrows = [
    ...(both ? [{ tip: a, angle: outwards ? angle : angle + Math.PI }] : []),
    { tip: b, angle: outwards ? angle + Math.PI : angle },
  ]
  const along = (t: number): Screen => screen(a[0] + ux * t, a[1] + uy * t)
  const tail = outwards ? 2 * ARROW : 0
  const tails = { a: both ? -tail : 0, b: length + tail }
  const centre = centreOf()
  const figure: Laid['figure'] = lettered
    ? { centre, angle: readable(angle), width: width + 2 * GAP, height, text: size.text }
    : null
  const leader = leaderOf()
  const strokes: Stroke[] = [
    ...witness,
    ...lines(),
    ...(leader === null ? [] : [{ points: leader, line: 'full' as const, fine: true }]),
  ]
  const laid = { item: size, strokes, arrows, figure, title: null, word: wordOf(size, moved(b, 8)) }
  return leader === null ? laid : { ...laid, leader }

  /** So far along the line, but clear of its arrows. */
  function onLine(share: number): number {
    const clear = ARROW + PADDING + width / 2
    return Math.min(length - clear, Math.max(clear, share * length))
  }

  function centreOf(): Screen {
    if (where.kind === 'on') return along(onLine(where.at))
    if (where.kind === 'beyond') {
      const far = PADDING + width / 2
      return along(where.end === 'b' ? tails.b + far : tails.a - far)
    }
    const far = where.side * (where.leader + BESIDE + height / 2)
    const [x, y] = along(length / 2)
    return screen(x + nx * far, y + ny * far)
  }

  function lines(): Stroke[] {
    if (figure === null) return [{ points: [along(tails.a), along(tails.b)], line: size.line }]
    if (where.kind === 'on') {
      return [
        { points: [along(0), along(onLine(where.at) - width / 2 - GAP)], line: size.line },
        { points: [along(onLine(where.at) + width / 2 + GAP), along(length)], line: size.line },
      ]
    }
    const onward = where.kind === 'beyond' ? PADDING - GAP : 0
    const [from, to] = [
      tails.a - (where.kind === 'beyond' && where.end === 'a' ? onward : 0),
      tails.b + (where.kind === 'beyond' && where.end === 'b' ? onward : 0),
    ]
    return [{ points: [along(from), along(to)], line: size.line }]
  }

  function leaderOf(): Screen[] | null {
    if (figure === null || where.kind !== 'beside' || where.leader === 0) return null
    const [x, y] = along(length / 2)
    const end = where.side * where.leader
    return [screen(x, y), screen(x + nx * end, y + ny * end)]
  }
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
  place: number,
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
    size.text === '' ? null : { centre: about(), angle: 0, width: width + 2 * GAP, height, text: size.text }
  /** Outside the arc, further outside, or within it. */
  function about(): Screen {
    const far = 6 + width / 2
    return on(0.5, place === 0 ? radius + far : place === 1 ? radius + far + 24 : Math.max(0, radius - far))
  }
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
  place: number,
): Laid {
  const points = span.pixels.map(at)
  const { width, height } = lettering(size.text)
  const middle: Screen = span.closed
    ? screen(
        points.reduce((sum, [x]) => sum + x, 0) / points.length,
        points.reduce((sum, [, y]) => sum + y, 0) / points.length,
      )
    : (points[Math.floor(points.length / 2)] ?? screen(0, 0))
  // On it, or above or below it.
  const aside = place === 0 ? 0 : (place === 1 ? -1 : 1) * (height + 2 * BESIDE)
  const centre = screen(middle[0], middle[1] + aside)
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
