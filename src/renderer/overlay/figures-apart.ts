import { screen } from '../../core/geometry/frames.ts'
import type { BoxSize } from '../camera/camera.ts'
import { boxCorners, collide, type LetteredBox } from './geometry-on-screen.ts'
import { coversPrinted, type UnderLettering } from './ground.ts'
import type { Laid } from './laid.ts'
import { type Lettering, layOutSize, type OnScreen, placesOf, type SizeItem } from './lay-out-size.ts'
import { wordApart } from './words-apart.ts'

/** What a place of a figure costs, against the ink under it. */
const ONE_LATER = 0.012
const OUT_OF_SIGHT = 0.5
const OVER_PRINTED = 100
const OVER_OTHERS = 10
/**
 * So much ink at the most lies under a figure, by its rank: none under what is chosen is too much, and least is borne
 * under what may as well be read off the table. Printed figures come to 0.06 and more, bare paper to less than 0.015.
 */
const MOST_INK = [Infinity, 0.08, 0.08, 0.032] as const
/** Another place has to be so much better before a figure leaves the one that it has. */
const STAYS = 0.06

interface Around {
  at: OnScreen
  lettering: Lettering
  box: BoxSize
  ground: UnderLettering
  /** Lettering that stands already; what is placed is added. */
  taken: LetteredBox[]
}

type LaidSize = Laid & { item: SizeItem }

const isSize = (one: Laid): one is LaidSize => one.item.kind === 'size'

/** Chosen sizes come first, then those with something wrong, then figured sizes, then the rest. */
const rankOf = ({ item }: LaidSize): number => (item.chosen ? 0 : item.wrong !== '' ? 1 : item.known ? 2 : 3)

/** Whether it has a figure that is placed with the others: what is chosen has its figure before any other. */
export const isPlacedLate = (one: Laid): boolean => isSize(one) && one.figure !== null && !one.item.chosen

/**
 * Gives each figure a place beside what it quotes, where it covers no other lettering, no printed figure and as little of
 * the drawing as may be. One that has no such place is not lettered, unless it is chosen. Of the others, whose line goes
 * where its figure does, the word beside that line is placed with it.
 * @param which of them are placed now; the rest stay as they are
 */
export function figuresApart(laid: readonly Laid[], which: 'chosen' | 'others', around: Around): Laid[] {
  const keys = keysOf(laid)
  const placed = new Map<Laid, Laid>()
  const ranked = laid.filter(isSize).sort((a, b) => rankOf(a) - rankOf(b))
  for (const one of ranked) {
    if (one.figure === null || one.item.chosen !== (which === 'chosen')) continue
    const next = place(one, keys.get(one) ?? '', around)
    if (next.figure !== null) around.taken.push(next.figure)
    placed.set(one, which === 'others' ? wordApart(next, around.taken, around.lettering) : next)
  }
  return laid.map((one) => placed.get(one) ?? one)
}

/** What a figure's place is remembered by: what it is about, and which of its sizes. */
function keysOf(laid: readonly Laid[]): Map<Laid, string> {
  const counts = new Map<string, number>()
  const keys = new Map<Laid, string>()
  for (const one of laid.filter(isSize)) {
    const about = JSON.stringify(one.item.about)
    const count = counts.get(about) ?? 0
    counts.set(about, count + 1)
    keys.set(one, `${about} ${count}`)
  }
  return keys
}

function place(one: LaidSize, key: string, around: Around): Laid {
  const { item } = one
  const rank = rankOf(one)
  const { at, lettering, box, ground, taken } = around
  const stood = ground.stood.get(key)
  let best: { laid: Laid; cost: number; k: number } | null = null
  for (let k = 0; k < placesOf(item); k++) {
    const laid = layOutSize(item, at, lettering, k)
    const { figure } = laid
    if (figure === null) return laid
    const collides = taken.some((other) => collide(figure, other))
    const covers = [figure, ...leaders(laid)].some((box) => coversPrinted(box, ground))
    const seen = isSeenWhole(figure, box)
    if ((collides || covers || !seen) && !item.chosen) continue
    const ink = ground.ink(figure) + leaders(laid).reduce((sum, box) => sum + ground.ink(box), 0)
    if (ink > (MOST_INK[rank] ?? 0)) continue
    const cost =
      k * ONE_LATER +
      ink +
      (seen ? 0 : OUT_OF_SIGHT) +
      (covers ? OVER_PRINTED : 0) +
      (collides ? OVER_OTHERS : 0) -
      (k === stood ? STAYS : 0)
    if (best === null || cost < best.cost) best = { laid, cost, k }
  }
  if (best === null) {
    // A dimension line that is drawn through, with no gap for its figure.
    return { ...layOutSize({ ...item, text: '' }, at, lettering), item, figure: null }
  }
  ground.stood.set(key, best.k)
  return best.laid
}

/** Leaders to a figure, as boxes so wide as nobody reads what lies under them. */
const leaders = ({ leader }: Laid): LetteredBox[] => {
  const [from, to] = leader ?? []
  if (from === undefined || to === undefined) return []
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return [
    {
      centre: screen((from[0] + to[0]) / 2, (from[1] + to[1]) / 2),
      angle: Math.atan2(dy, dx),
      width: Math.hypot(dx, dy),
      height: LEADER_WIDE,
    },
  ]
}
const LEADER_WIDE = 4

const isSeenWhole = (figure: LetteredBox, box: BoxSize): boolean =>
  boxCorners(figure).every(([x, y]) => x >= 0 && y >= 0 && x <= box.width && y <= box.height)
