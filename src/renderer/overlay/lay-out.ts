import { distanceBetween } from '../../core/geometry/distance-between.ts'
import { pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { applied, type BoxSize, type Camera, extent, matrixOf } from '../camera/camera.ts'
import { againStrokes, centreStrokes } from './centre-strokes.ts'
import { figuresApart, isPlacedLate } from './figures-apart.ts'
import { boxCorners, farFrom, type LetteredBox } from './geometry-on-screen.ts'
import { bareGround, type UnderLettering } from './ground.ts'
import type { Item } from './items.ts'
import type { Laid, Stroke } from './laid.ts'
import { type Lettering, layOutSize, type OnScreen } from './lay-out-size.ts'
import { layOutNote } from './note-mark.ts'
import { alongArc, type MarkShape } from './shape.ts'
import { middle } from './span.ts'
import { type FramedView, tabsOf } from './view-tab.ts'
import { wordApart } from './words-apart.ts'

/** Half of the cross that a picked point is drawn as, CSS pixels; from far off, down to the least. */
const CROSS = 5
const LEAST_CROSS = 2
/** So many pixels of the scan a cross covers at the most, unless it is at its least. */
const CROSS_ON_SCAN = 60
/** Points of a circle on the screen: each chord is less than a quarter of a pixel from it at any size in use. */
const ROUND = 96
/** What lies so far outside the box is left out. */
const OUTSIDE = 60

/**
 * Where everything falls on the screen. Figures stand beside what they quote and keep off each other and off what is
 * printed; where there is no room for all, those of what is chosen come first, then of what is disputed.
 */
export function layOut(
  items: readonly Item[],
  camera: Camera,
  box: BoxSize,
  lettering: Lettering,
  ground: UnderLettering = bareGround(),
): Laid[] {
  const matrix = matrixOf(camera, box)
  const at: OnScreen = (pixel) => applied(matrix, pixel)
  const near = items
    .map((item) =>
      item.kind === 'note' ? withoutNumber(item, at) : layOutItem(item, at, camera.zoom, lettering),
    )
    .filter((one) => isNear(one, box))
  const tabbed = withTabs(near, box, lettering, ground)
  const taken: LetteredBox[] = tabbed.flatMap(({ title }) => (title === null ? [] : [title]))
  const around = { at, lettering, box, ground, taken }
  const chosen = figuresApart(tabbed, 'chosen', around)
  const worded = chosen.map((one) => (isPlacedLate(one) ? one : wordApart(one, taken, lettering)))
  const lettered = figuresApart(worded, 'others', around)
  // A note's mark says nothing without its number: last of all, so that it goes where nothing else is lettered.
  return lettered.map((one) => {
    if (one.item.kind !== 'note') return one
    const note = layOutNote(one.item, at, lettering, { taken, box })
    if (note.figure !== null) taken.push(note.figure)
    return note
  })
}

/** The frames of the views with their tabs. */
function withTabs(laid: readonly Laid[], box: BoxSize, lettering: Lettering, ground: UnderLettering): Laid[] {
  const views = laid.flatMap((one) => (one.item.kind === 'view' ? [{ one, item: one.item }] : []))
  const framed = views.map(({ one, item }): FramedView => {
    const frame = extent(one.strokes.flatMap(({ points }) => points))
    return { frame, chosen: item.chosen, title: item.title, lines: item.lines }
  })
  const tabs = tabsOf(framed, box, lettering, ground)
  const tabOf = new Map(views.map(({ one }, i) => [one, tabs[i] ?? null]))
  return laid.map((one) => (tabOf.has(one) ? { ...one, title: tabOf.get(one) ?? null } : one))
}

/** A note before the place of its number is known. */
const withoutNumber = (item: Item & { kind: 'note' }, at: OnScreen): Laid => ({
  ...bare,
  item,
  strokes: [{ points: item.outline.map(at), line: 'full', closed: true }],
})

function isNear({ strokes, figure }: Laid, box: BoxSize): boolean {
  const points = [
    ...strokes.flatMap((stroke) => stroke.points),
    ...(figure === null ? [] : boxCorners(figure)),
  ]
  const { left, top, right, bottom } = extent(points)
  return right >= -OUTSIDE && bottom >= -OUTSIDE && left <= box.width + OUTSIDE && top <= box.height + OUTSIDE
}

const bare = { arrows: [], figure: null, title: null, word: null }

function layOutItem(
  item: Exclude<Item, { kind: 'note' }>,
  at: OnScreen,
  zoom: number,
  lettering: Lettering,
): Laid {
  switch (item.kind) {
    case 'size':
      return layOutSize(item, at, lettering)
    case 'mark':
      return {
        ...bare,
        item,
        strokes: [
          ...markStrokes(item.shape, at, zoom, item.chosen),
          ...(item.profiles === undefined
            ? []
            : centreStrokes(item.profiles.kept, item.profiles.leftOut, at)),
          ...againStrokes(item.again ?? [], at),
        ],
        word: item.edge === undefined ? null : { at: besideMark(item.shape, at, zoom), text: item.edge },
      }
    case 'residual': {
      const tail = at(item.at)
      const tip = at(pixel(item.at[0] + item.vector[0], item.at[1] + item.vector[1]))
      const angle = Math.atan2(tip[1] - tail[1], tip[0] - tail[0])
      const long = distanceBetween(tip, tail) >= 2
      return {
        ...bare,
        item,
        strokes: [{ points: [tail, tip], line: 'full' }],
        arrows: long ? [{ tip, angle }] : [],
        word: item.word === '' ? null : { at: screen(tip[0] + 6, tip[1]), text: item.word },
      }
    }
    case 'found figure':
    case 'figure box': {
      const [x, y, width, height] = item.kind === 'figure box' ? item.box : roomier(item, zoom)
      const points = [
        pixel(x, y),
        pixel(x + width, y),
        pixel(x + width, y + height),
        pixel(x, y + height),
      ].map(at)
      return { ...bare, item, strokes: [boxStroke(item, points)] }
    }
    case 'view': {
      const points = item.outline.map(at)
      return { ...bare, item, strokes: [{ points, line: 'chain', closed: true, fine: true }] }
    }
  }
}

/** How far the box round what was found stands off it, so that no line covers its strokes, CSS pixels. */
const OFF_FIGURE = 3
const OFF_CHOSEN = 8

function roomier(
  { box, chosen }: Item & { kind: 'found figure' },
  zoom: number,
): [number, number, number, number] {
  const [x, y, width, height] = box
  const off = (chosen ? OFF_CHOSEN : OFF_FIGURE) / zoom
  return [x - off, y - off, width + 2 * off, height + 2 * off]
}

/** A box of what was found is a thin line. */
function boxStroke(item: Item & { kind: 'figure box' | 'found figure' }, points: readonly Screen[]): Stroke {
  if (item.kind === 'figure box') return { points, line: 'full', closed: true }
  return { points, line: item.line, closed: true, fine: true }
}

function markStrokes(shape: MarkShape, at: OnScreen, zoom: number, chosen: boolean): Stroke[] {
  const line = 'full' as const
  const arm = chosen ? CROSS : Math.max(LEAST_CROSS, Math.min(CROSS, CROSS_ON_SCAN * zoom))
  const cross = ([x, y]: Screen): Stroke[] => [
    {
      points: [screen(x - arm, y), screen(x + arm, y)],
      line,
    },
    {
      points: [screen(x, y - arm), screen(x, y + arm)],
      line,
    },
  ]
  switch (shape.kind) {
    case 'point':
      return cross(at(shape.at))
    case 'segment':
      return [{ points: shape.ends.map(at), line }]
    case 'circle': {
      const [x, y] = at(shape.centre)
      const radius = shape.radius * zoom
      const middle = radius > 2 * arm ? cross(screen(x, y)) : []
      const { arc } = shape
      if (arc !== undefined) {
        return [{ points: alongArc(shape.centre, shape.radius, arc).map(at), line }, ...middle]
      }
      const points = Array.from({ length: ROUND }, (_, i): Screen => {
        const angle = (2 * Math.PI * i) / ROUND
        return screen(x + radius * Math.cos(angle), y + radius * Math.sin(angle))
      })
      return [{ points, line, closed: true }, ...middle]
    }
    case 'path':
      return [{ points: shape.pixels.map(at), line, closed: shape.closed }]
  }
}

/** Where a word stands that is said of a mark: outside a circle, beside anything else. */
function besideMark(shape: MarkShape, at: OnScreen, zoom: number): Screen {
  const [x, y] = at(middle(shape))
  const far = (shape.kind === 'circle' ? shape.radius * zoom : 0) + CROSS
  return screen(x + far * Math.SQRT1_2 + 4, y + far * Math.SQRT1_2 + 4)
}

const PRECEDENCE: readonly Item['kind'][] = [
  'mark',
  'size',
  'residual',
  'found figure',
  'figure box',
  'note',
  'view',
]

/**
 * The item nearest to a place on the screen, within a distance; of several, one whose lettering is there, else marks
 * before sizes before views.
 */
export function nearest(laid: readonly Laid[], place: Screen, within: number): Item | null {
  let best: { item: Item; order: number; far: number } | null = null
  for (const { item, strokes, figure, title } of laid) {
    const lines = strokes.map(({ points, closed }) =>
      farFrom(place, closed === true && points[0] !== undefined ? [...points, points[0]] : points),
    )
    // Lettering stands on its own ground, over every line.
    const lettered = (figure !== null && isOn(place, figure)) || (title !== null && isOn(place, title))
    const far = lettered ? 0 : Math.min(Infinity, ...lines)
    const order = lettered ? -1 : PRECEDENCE.indexOf(item.kind)
    if (far > within) continue
    if (best === null || order < best.order || (order === best.order && far < best.far)) {
      best = { item, order, far }
    }
  }
  return best?.item ?? null
}

function isOn([x, y]: Screen, { centre, angle, width, height }: LetteredBox): boolean {
  const [dx, dy] = [x - centre[0], y - centre[1]]
  const along = dx * Math.cos(angle) + dy * Math.sin(angle)
  const across = dy * Math.cos(angle) - dx * Math.sin(angle)
  return Math.abs(along) <= width / 2 && Math.abs(across) <= height / 2
}
