import { type Edges, edgesRound } from '../glyphs/edges.ts'

/** How windows are laid, in the unit of the boxes. */
export interface WindowLimits {
  /** Room round what a window covers. */
  readonly room: number
  /** No side is longer, unless a box is. */
  readonly longest: number
}

/** Windows that cover all boxes and little else: they are parted as long as that makes what is looked at less. */
export function coveringWindows(boxes: readonly Edges[], limits: WindowLimits): Edges[] {
  if (boxes.length === 0) return []
  const { room, longest } = limits
  const whole = edgesRound(boxes)
  const best = [bestCut(boxes, 'left', 'right', room), bestCut(boxes, 'top', 'bottom', room)].sort(
    (a, b) => (a?.cost ?? Number.POSITIVE_INFINITY) - (b?.cost ?? Number.POSITIVE_INFINITY),
  )[0]
  const long = whole.right - whole.left > longest || whole.bottom - whole.top > longest
  if (best === undefined || (!long && best.cost >= costOf(whole, room)))
    return [
      {
        left: whole.left - room,
        top: whole.top - room,
        right: whole.right + room,
        bottom: whole.bottom + room,
      },
    ]
  return [...coveringWindows(best.before, limits), ...coveringWindows(best.after, limits)]
}

const costOf = ({ left, top, right, bottom }: Edges, room: number): number =>
  (right - left + 2 * room) * (bottom - top + 2 * room)

interface Cut {
  readonly before: readonly Edges[]
  readonly after: readonly Edges[]
  readonly cost: number
}

/** Of all places to part boxes that are in order along one way, the one that leaves least to be looked at. */
function bestCut(
  boxes: readonly Edges[],
  from: 'left' | 'top',
  to: 'right' | 'bottom',
  room: number,
): Cut | undefined {
  const sorted = [...boxes].sort((a, b) => a[from] + a[to] - b[from] - b[to])
  const before = roundEach(sorted)
  const after = roundEach([...sorted].reverse()).reverse()
  let at = 0
  let least = Number.POSITIVE_INFINITY
  for (let i = 1; i < sorted.length; i++) {
    const [a, b] = [before[i - 1], after[i]]
    if (a === undefined || b === undefined) continue
    const cost = costOf(a, room) + costOf(b, room)
    if (cost < least) [at, least] = [i, cost]
  }
  return at === 0 ? undefined : { before: sorted.slice(0, at), after: sorted.slice(at), cost: least }
}

/** Edges round the first, the first two, and so on. */
function roundEach(boxes: readonly Edges[]): Edges[] {
  let round: Edges | undefined
  return boxes.map((box) => {
    round = round === undefined ? box : edgesRound([round, box])
    return round
  })
}
