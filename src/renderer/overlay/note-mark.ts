import { type Pixel, pixel, type Screen, screen } from '../../core/geometry/frames.ts'
import { type BoxSize, type Extent, extent } from '../camera/camera.ts'
import { boxCorners, collide, type LetteredBox } from './geometry-on-screen.ts'
import type { Item } from './items.ts'
import type { Laid, Stroke } from './laid.ts'
import type { Lettering, OnScreen } from './lay-out-size.ts'

type NoteItem = Extract<Item, { kind: 'note' }>

/** Length of a leg of a corner bracket, CSS pixels; of a short side a third. */
const LEG = 12
/** The box with the number: its height, and its width at least, CSS pixels. */
const HIGH = 20
const WIDE = 20
/** Between the number and its box. */
const PADDING = 4
/** How long a leader may be, the shortest first, CSS pixels. */
const LEADERS = [14, 30, 52, 80]
/** How near the box may come to other lettering and to the edge of the sheet's window, CSS pixels. */
const CLEAR = 3

/** Which way a leader goes from the middle of what it is about: right and down are positive. */
const WAYS = [
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [0, -1],
  [1, 0],
  [0, 1],
  [-1, 0],
] as const

/** What a note keeps off. */
export interface KeptOff {
  /** Lettering that stands already. */
  taken: readonly LetteredBox[]
  /** What is seen of the sheet. */
  box: BoxSize
}

/** Corner brackets: at each corner of an outline a leg along either side. */
function brackets(corners: readonly Screen[]): Stroke[] {
  return corners.map((corner, k): Stroke => {
    const before = corners.at(k - 1) ?? corner
    const after = corners[(k + 1) % corners.length] ?? corner
    return { points: [legTo(corner, before), corner, legTo(corner, after)], line: 'full', fine: true }
  })
}

function legTo([x, y]: Screen, [toX, toY]: Screen): Screen {
  const long = Math.hypot(toX - x, toY - y)
  const share = long === 0 ? 0 : Math.min(LEG, long / 3) / long
  return screen(x + share * (toX - x), y + share * (toY - y))
}

const cornersOf = ({ left, top, right, bottom }: Extent): Screen[] => [
  screen(left, top),
  screen(right, top),
  screen(right, bottom),
  screen(left, bottom),
]

/** A box at the end of a leader, and the leader. */
interface Placed {
  box: LetteredBox
  leader: readonly Screen[]
}

/** Where the box with a number may stand about an outline, the best place first: outside it, else in its corners. */
function places({ left, top, right, bottom }: Extent, width: number): Placed[] {
  const [middleX, middleY] = [(left + right) / 2, (top + bottom) / 2]
  return [1, -1].flatMap((out) =>
    LEADERS.flatMap((long) =>
      WAYS.map(([x, y]): Placed => {
        const from = screen(
          x === 0 ? middleX : x > 0 ? right : left,
          y === 0 ? middleY : y > 0 ? bottom : top,
        )
        const [stepX, stepY] = [x * out, y * out]
        const reach = long / Math.hypot(x, y)
        const to = screen(from[0] + stepX * reach, from[1] + stepY * reach)
        const centre = screen(to[0] + (stepX * width) / 2, to[1] + (stepY * HIGH) / 2)
        return { box: { centre, angle: 0, width, height: HIGH }, leader: [from, to] }
      }),
    ),
  )
}

/** The first place where the box keeps off what stands already and is seen whole; else the first that keeps off it. */
function freePlace(all: readonly Placed[], { taken, box }: KeptOff): Placed | undefined {
  const free = all.filter(({ box: place }) => {
    const wide = { ...place, width: place.width + 2 * CLEAR, height: place.height + 2 * CLEAR }
    return !taken.some((other) => collide(wide, other))
  })
  const isSeen = ({ box: place }: Placed): boolean =>
    boxCorners(place).every(
      ([x, y]) => x >= CLEAR && y >= CLEAR && x <= box.width - CLEAR && y <= box.height - CLEAR,
    )
  return free.find(isSeen) ?? free[0] ?? all[0]
}

/** Where the printed figures of a sheet stand on the screen, that nothing is to cover. */
export const printedOnScreen = (printed: NoteItem['printed'], at: OnScreen): LetteredBox[] =>
  printed.map(([x, y, width, height]) => {
    const [a, b, c] = [at(pixel(x, y)), at(pixel(x + width, y)), at(pixel(x + width, y + height))]
    return {
      centre: screen((a[0] + c[0]) / 2, (a[1] + c[1]) / 2),
      angle: Math.atan2(b[1] - a[1], b[0] - a[0]),
      width: Math.hypot(b[0] - a[0], b[1] - a[1]),
      height: Math.hypot(c[0] - b[0], c[1] - b[1]),
    }
  })

/**
 * Where a note falls on the screen: corner brackets about its region, and its number in a box on a leader, which goes to a
 * side where it covers no printed figure and no lettering.
 */
export function layOutNote(item: NoteItem, at: OnScreen, lettering: Lettering, around: KeptOff): Laid {
  const points = item.outline.map((place: Pixel): Screen => at(place))
  const region = extent(points)
  const { width, height } = lettering(item.number)
  const boxWidth = Math.max(WIDE, width + 2 * PADDING)
  const taken = [...around.taken, ...printedOnScreen(item.printed, at)]
  const placed = freePlace(places(region, boxWidth), { ...around, taken })
  if (placed === undefined) throw new RangeError('A note has no place for its number.')
  const { box, leader } = placed
  const round = item.bracketed ? brackets(points.length === 4 ? points : cornersOf(region)) : []
  return {
    item,
    strokes: [
      ...round,
      { points: leader, line: 'full', fine: true },
      { points: boxCorners(box), line: 'full', closed: true },
    ],
    arrows: [],
    figure: {
      ...box,
      width: boxWidth - 2,
      height: Math.max(HIGH - 2, Math.min(height, HIGH - 2)),
      text: item.number,
    },
    title: null,
    word: null,
  }
}
