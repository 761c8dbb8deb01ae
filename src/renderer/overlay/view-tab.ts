import { screen } from '../../core/geometry/frames.ts'
import type { BoxSize, Extent } from '../camera/camera.ts'
import { collide, type LetteredBox } from './geometry-on-screen.ts'
import type { UnderLettering } from './ground.ts'
import type { Lettering } from './lay-out-size.ts'

/** Screen units, CSS pixels. */
export const TAB_PADDING = 6
export const TAB_HEIGHT = 20
export const TAB_LINE = 16
/** A frame that is narrower has no tab, unless it is chosen. */
const LEAST_FRAME = 28

/** What a tab letters. */
export interface TabWords {
  title: string
  lines: readonly string[]
}

/** A view's frame on the screen, and what its tab says. */
export interface FramedView extends TabWords {
  frame: Extent
  chosen: boolean
}

type Tab = LetteredBox & TabWords

/** A word cut so that it is no wider than that, with an ellipsis; empty where not even a sign has room. */
function cut(word: string, most: number, lettering: Lettering): string {
  if (lettering(word).width <= most) return word
  const signs = [...word]
  for (let n = signs.length - 1; n > 0; n--) {
    const shorter = `${signs.slice(0, n).join('').trimEnd()}…`
    if (lettering(shorter).width <= most) return shorter
  }
  return ''
}

/** Tabs may stand outside the frame at each corner, in order, and last inside it. */
function places({ left, top, right, bottom }: Extent, width: number, height: number, box: BoxSize) {
  const boxAt = (x: number, y: number): LetteredBox => ({
    centre: screen(x + width / 2, y + height / 2),
    angle: 0,
    width,
    height,
  })
  // Along an edge that is seen in part only, a tab is where the edge is seen.
  const slid = Math.max(left, Math.min(0, right - width))
  const slidBack = Math.min(right - width, Math.max(box.width - width, left))
  const risen = Math.max(top, Math.min(0, bottom - height))
  return [
    ...[boxAt(slid, top - height), boxAt(slidBack, top - height)],
    ...[boxAt(slid, bottom), boxAt(slidBack, bottom)],
    ...[boxAt(left - width, risen), boxAt(right, risen)],
    ...[
      boxAt(slid, top),
      boxAt(slidBack, top),
      boxAt(slid, bottom - height),
      boxAt(slidBack, bottom - height),
    ],
  ]
}
const OUTSIDE = 6

/** What a place costs, against the ink under it, which is 1 at the most. */
const OVER_A_NEIGHBOUR = 4
const INSIDE = 2
const ONE_LATER = 0.01
const INK = 4

const isSeen = ({ centre: [x, y], width, height }: LetteredBox, box: BoxSize): boolean =>
  x - width / 2 >= 0 && y - height / 2 >= 0 && x + width / 2 <= box.width && y + height / 2 <= box.height

const boxOf = ({ left, top, right, bottom }: Extent): LetteredBox => ({
  centre: screen((left + right) / 2, (top + bottom) / 2),
  angle: 0,
  width: right - left,
  height: bottom - top,
})

/**
 * Where the tabs of the views stand: each outside its frame and on it, where they lie over no other view's frame, over no
 * other tab and over as little of the drawing as may be. Null for a view that has no room for one in sight.
 */
export function tabsOf(
  views: readonly FramedView[],
  box: BoxSize,
  lettering: Lettering,
  ground: UnderLettering,
): (Tab | null)[] {
  const tabs: (Tab | null)[] = views.map(() => null)
  const frames = views.map(({ frame }) => boxOf(frame))
  // What is chosen has the first choice.
  const order = views.map((_, i) => i).sort((i, j) => Number(views[j]?.chosen) - Number(views[i]?.chosen))
  for (const i of order) {
    const view = views[i]
    if (view === undefined) continue
    const words = wordsOf(view, lettering)
    if (words === null) continue
    const wide = Math.max(...[words.title, ...words.lines].map((word) => lettering(word).width))
    const [width, height] = [wide + 2 * TAB_PADDING, TAB_HEIGHT + TAB_LINE * words.lines.length]
    let best: { place: LetteredBox; cost: number } | null = null
    places(view.frame, width, height, box).forEach((place, k) => {
      if (!isSeen(place, box) || tabs.some((other) => other !== null && collide(place, other))) return
      const over = frames.some((frame, j) => j !== i && collide(place, frame))
      const cost =
        k * ONE_LATER +
        INK * ground.ink(place) +
        (k >= OUTSIDE ? INSIDE : 0) +
        (over ? OVER_A_NEIGHBOUR : 0) +
        (ground.printed.some((figure) => collide(place, figure)) ? OVER_A_NEIGHBOUR : 0)
      if (best === null || cost < best.cost) best = { place, cost }
    })
    const found = best as { place: LetteredBox; cost: number } | null
    // A tab that would hide the drawing says less than the drawing does.
    if (found === null || (!view.chosen && found.cost >= OVER_A_NEIGHBOUR)) continue
    tabs[i] = { ...found.place, ...words }
  }
  return tabs
}

function wordsOf({ frame, title, lines, chosen }: FramedView, lettering: Lettering): TabWords | null {
  if (chosen) return { title, lines }
  const room = frame.right - frame.left
  const shown = room < LEAST_FRAME ? '' : cut(title, room - 2 * TAB_PADDING, lettering)
  return shown === '' ? null : { title: shown, lines }
}
