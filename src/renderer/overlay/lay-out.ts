import { distanceBetween } from '../../core/geometry/distance-between.ts'
import { pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { applied, type BoxSize, type Camera, extent, matrixOf } from '../camera/camera.ts'
import { againStrokes, centreStrokes } from './centre-strokes.ts'
import { boxCorners, collide, farFrom, type LetteredBox } from './geometry-on-screen.ts'
import type { Item } from './items.ts'
import type { Laid, Stroke } from './laid.ts'
import { type Lettering, layOutSize, type OnScreen } from './lay-out-size.ts'
import { layOutNote } from './note-mark.ts'
import type { MarkShape } from './shape.ts'
import { middle } from './span.ts'

/** Half of the cross that a picked point is drawn as, CSS pixels. */
const CROSS = 5
/** Points of a circle on the screen: each chord is less than a quarter of a pixel from it at any size in use. */
const ROUND = 96
/** What lies so far outside the box is left out. */
const OUTSIDE = 60

/** Title lettering against that of figures, in width. */
const TITLE_WIDER = 1.8

/**
 * Where everything falls on the screen. Of figures that would lie on each other, only the first is lettered; one that
 * belongs to what is chosen always is, and so are titles and words of warning.
 */
export function layOut(items: readonly Item[], camera: Camera, box: BoxSize, lettering: Lettering): Laid[] {
  const matrix = matrixOf(camera, box)
  const at: OnScreen = (pixel) => applied(matrix, pixel)
  const laid = titlesApart(
    items
      .map((item) =>
        item.kind === 'note' ? withoutNumber(item, at) : layOutItem(item, at, camera.zoom, lettering),
      )
      .filter((one) => isNear(one, box)),
    lettering,
  )
  const taken: LetteredBox[] = laid.flatMap(({ item, figure, title, word }) => [
    ...(item.chosen && figure !== null ? [figure] : []),
    ...(title === null ? [] : [titleBox(title, lettering)]),
    ...(word === null ? [] : [wordBox(word, lettering)]),
  ])
  const lettered = laid.map((one) => {
    const { figure } = one
    if (figure === null || one.item.chosen) return one
    if (taken.some((other) => collide(figure, other))) return unlettered(one, at, lettering)
    taken.push(figure)
    return one
  })
  // A note's mark says nothing without its number: last of all, so that it goes where nothing else is lettered.
  return lettered.map((one) => {
    if (one.item.kind !== 'note') return one
    const note = layOutNote(one.item, at, lettering, { taken, box })
    if (note.figure !== null) taken.push(note.figure)
    return note
  })
}

/** A note before the place of its number is known. */
const withoutNumber = (item: Item & { kind: 'note' }, at: OnScreen): Laid => ({
  ...bare,
  item,
  strokes: [{ points: item.outline.map(at), line: 'full', closed: true }],
})

function titleBox(
  { top: [x, y], title, lines }: NonNullable<Laid['title']>,
  lettering: Lettering,
): LetteredBox {
  const width = Math.max(TITLE_WIDER * lettering(title).width, ...lines.map((line) => lettering(line).width))
  const height = 26 + 16 * lines.length
  return { centre: screen(x, y + height / 2), angle: 0, width, height }
}

function wordBox({ at: [x, y], text }: NonNullable<Laid['word']>, lettering: Lettering): LetteredBox {
  const { width, height } = lettering(text)
  return { centre: screen(x + width / 2, y), angle: 0, width, height }
}

/** How far down a title may go to be clear of another, in steps, CSS pixels. */
const DOWN = [0, 14, 28, 42, 56]

/** Where titles would lie on each other, the later one goes further down or else without the lines under it. */
function titlesApart(laid: readonly Laid[], lettering: Lettering): Laid[] {
  const boxes: LetteredBox[] = []
  return laid.map((one) => {
    if (one.title === null) return one
    const whole = one.title
    const [x, y] = whole.top
    const title = DOWN.map((down) => ({ ...whole, top: screen(x, y + down) as Screen })).find(
      (moved) => !boxes.some((other) => collide(titleBox(moved, lettering), other)),
    ) ?? { ...whole, lines: [] }
    boxes.push(titleBox(title, lettering))
    return { ...one, title }
  })
}

/** A dimension line that is drawn through, with no gap for its figure. */
function unlettered(one: Laid, at: OnScreen, lettering: Lettering): Laid {
  if (one.item.kind !== 'size') return { ...one, figure: null }
  return { ...layOutSize({ ...one.item, text: '' }, at, lettering), item: one.item, figure: null }
}

function isNear({ strokes, title, figure }: Laid, box: BoxSize): boolean {
  const points = [
    ...strokes.flatMap((stroke) => stroke.points),
    ...(title === null ? [] : [title.top]),
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
          ...markStrokes(item.shape, at, zoom),
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
    case 'figure box': {
      const [x, y, width, height] = item.box
      const points = [
        pixel(x, y),
        pixel(x + width, y),
        pixel(x + width, y + height),
        pixel(x, y + height),
      ].map(at)
      return { ...bare, item, strokes: [{ points, line: 'full', closed: true }] }
    }
    case 'view': {
      const points = item.outline.map(at)
      const { left, right, bottom } = extent(points)
      const top: Screen = screen((left + right) / 2, bottom + 6)
      return {
        ...bare,
        item,
        strokes: [{ points, line: 'chain', closed: true, fine: true }],
        title: { top, title: item.title, lines: right - left < 90 ? [] : item.lines },
      }
    }
  }
}

function markStrokes(shape: MarkShape, at: OnScreen, zoom: number): Stroke[] {
  const line = 'full' as const
  const cross = ([x, y]: Screen): Stroke[] => [
    {
      points: [screen(x - CROSS, y), screen(x + CROSS, y)],
      line,
    },
    {
      points: [screen(x, y - CROSS), screen(x, y + CROSS)],
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
      const points = Array.from({ length: ROUND }, (_, i): Screen => {
        const angle = (2 * Math.PI * i) / ROUND
        return screen(x + radius * Math.cos(angle), y + radius * Math.sin(angle))
      })
      return [{ points, line, closed: true }, ...(radius > 2 * CROSS ? cross(screen(x, y)) : [])]
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

const PRECEDENCE: readonly Item['kind'][] = ['mark', 'size', 'residual', 'figure box', 'note', 'view']

/**
 * The item nearest to a place on the screen, within a distance; of several, one whose lettering is there, else marks
 * before sizes before views.
 */
export function nearest(laid: readonly Laid[], place: Screen, within: number): Item | null {
  let best: { item: Item; order: number; far: number } | null = null
  for (const { item, strokes, figure } of laid) {
    const lines = strokes.map(({ points, closed }) =>
      farFrom(place, closed === true && points[0] !== undefined ? [...points, points[0]] : points),
    )
    // Lettering stands on its own ground, over every line.
    const lettered = figure !== null && isOn(place, figure)
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
