import { disjointSets } from './disjoint-sets.ts'
import type { Spot } from './spots.ts'

/** Neighbours of a row share so much of the lower one's height, and stand no further apart than so many heights. */
const [SHARED, GAP] = [0.3, 1.1]
/** Digits of one row and its fractions differ in height by no more than this factor; marks are lower than so many pixels' share. */
const [UNLIKE, MARK] = [2.4, 0.45]
/** Wider than so many heights of the higher of two, one of them is no glyph. */
const LONG = 1.4
/** A bar is so many times as long as it is high; what it parts stands within so many heights of it. */
const [BAR, BAR_REACH] = [2.5, 0.6]
/** Spots are looked for near one another in squares of this side, pixels. */
const CELL = 96

/** Spots in one level row, with how far neighbours stand apart in the mean, in heights. */
export interface SpotRow {
  readonly spots: readonly number[]
  readonly gap: number
}

/** Links spots into level rows, the parts of a stacked fraction by its bar among them. Each spot is in one row, by its number. */
export function linkRows(spots: readonly Spot[]): SpotRow[] {
  const { rootOf, join } = disjointSets(spots.length)
  const gaps = new Float32Array(spots.length)
  const links = new Int32Array(spots.length)
  const near = cellsOf(spots)
  for (const [i, a] of spots.entries()) {
    // Only the nearest to the right counts for how far neighbours stand apart.
    let nearest = Number.POSITIVE_INFINITY
    const over: number[] = []
    const under: number[] = []
    for (const j of near(a)) {
      const b = spots[j]
      if (j === i || b === undefined) continue
      if (areNeighbours(a, b)) {
        join(i, j)
        if (b.left + b.right > a.left + a.right)
          nearest = Math.min(nearest, Math.max(0, b.left - a.right) / Math.max(heightOf(a), heightOf(b)))
      } else if (isBarOf(a, b)) (b.top + b.bottom < a.top + a.bottom ? over : under).push(j)
    }
    if (over.length > 0 && under.length > 0) for (const j of [...over, ...under]) join(i, j)
    if (nearest < Number.POSITIVE_INFINITY) {
      gaps[i] = nearest
      links[i] = 1
    }
  }
  const rows = new Map<number, number[]>()
  for (let i = 0; i < spots.length; i++) {
    const at = rootOf(i)
    const row = rows.get(at)
    if (row === undefined) rows.set(at, [i])
    else row.push(i)
  }
  return [...rows.values()].map((row) => {
    const linked = row.reduce((sum, i) => sum + (links[i] ?? 0), 0)
    return { spots: row, gap: row.reduce((sum, i) => sum + (gaps[i] ?? 0), 0) / Math.max(1, linked) }
  })
}

const heightOf = ({ top, bottom }: Spot): number => bottom - top
const widthOf = ({ left, right }: Spot): number => right - left

function areNeighbours(a: Spot, b: Spot): boolean {
  const [low, high] = [Math.min(heightOf(a), heightOf(b)), Math.max(heightOf(a), heightOf(b))]
  const apart = Math.max(a.left, b.left) - Math.min(a.right, b.right)
  if (apart > GAP * high) return false
  const shared = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
  const long = Math.max(widthOf(a), widthOf(b))
  // What is long and flat is a bar or what is left of a line: it holds no row together.
  if (long > LONG * high) return false
  if (low < MARK * high) return shared > 0.5 * low && apart < 0.7 * high
  return high < UNLIKE * low && shared > SHARED * low
}

/** Whether the first may be a bar and the second stands right over it or under it. */
function isBarOf(bar: Spot, other: Spot): boolean {
  if (widthOf(bar) < BAR * heightOf(bar)) return false
  const high = heightOf(other)
  const middle = (other.left + other.right) / 2
  const gap = Math.max(bar.top - other.bottom, other.top - bar.bottom)
  return (
    gap < BAR_REACH * high &&
    gap > -0.3 * high &&
    middle > bar.left - 0.2 * high &&
    middle < bar.right + 0.2 * high &&
    widthOf(bar) < 3.2 * high
  )
}

/** The spots in the square that one is in and in those round it. */
function cellsOf(spots: readonly Spot[]): (spot: Spot) => number[] {
  const cells = new Map<number, number[]>()
  const key = (x: number, y: number): number => y * 65536 + x
  const cell = (spot: Spot): readonly [number, number] => [
    Math.floor((spot.left + spot.right) / 2 / CELL),
    Math.floor((spot.top + spot.bottom) / 2 / CELL),
  ]
  for (const [i, spot] of spots.entries()) {
    const at = key(...cell(spot))
    const there = cells.get(at)
    if (there === undefined) cells.set(at, [i])
    else there.push(i)
  }
  return (spot) => {
    const [x, y] = cell(spot)
    const found: number[] = []
    for (let dy = -1; dy <= 1; dy++)
      for (let dx = -1; dx <= 1; dx++) found.push(...(cells.get(key(x + dx, y + dy)) ?? []))
    return found
  }
}
