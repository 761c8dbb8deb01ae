import type { GreyWindow } from '../../imaging/index.ts'
import {
  digitHeight,
  type FindingOptions,
  type LetteringSpots,
  letteringSpots,
  turnedSpot,
} from './lettering-spots.ts'
import { linkRows, type SpotRow } from './link-rows.ts'
import type { Spot } from './spots.ts'

/** A box that may hold a figure: upright round it, in pixels of the picture's page. */
export interface FoundBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** Degrees clockwise by which what is in it is turned, as it is read from the bottom or the right. */
  readonly angle: number
}

/** A row that leans by more than this is at an odd angle, degrees; with fewer spots than so many it may yet be level. */
const [LEANS, SURE] = [7, 9]
/** What leans more is no row of this direction. */
const STEEPEST = 55
/** A row is no higher than so many times its digits: two rows of a fraction, and some room. */
const HIGHEST = 3.4
/** A row whose neighbours stand so much further apart than those of rows across it, so many times as long, is none. */
const [LOOSER, MORE] = [1.35, 1.5]
/** Lone glyphs are within these shares of what most are high. */
const [LONE_LOW, LONE_HIGH] = [0.6, 1.7]
/** Words of a figure stand no further apart, and its lines, in heights of most digits. */
const [WORDS, LINES] = [1.6, 0.8]
/** Room round a row, in heights of its digits. */
const ROOM = 0.2

/**
 * Boxes of a picture that may hold a figure: rows of spots as large as glyphs, level, upright or leaning, after long level
 * and upright lines were taken out. Many hold something else; whoever reads them tells.
 */
export function findFigureBoxes(picture: GreyWindow, options: FindingOptions = {}): FoundBox[] {
  const found = boxesOfSpots(letteringSpots(picture, options), options.smallest ?? 8)
  return found.map((box) => ({ ...box, x: box.x + picture.left, y: box.y + picture.top }))
}

/** The same of spots that were taken before. @returns pixels of what they were taken of */
export function boxesOfSpots({ spots, high }: LetteringSpots, smallest: number): FoundBox[] {
  const turned = spots.map(turnedSpot)
  const [level, upright] = [linkRows(spots), linkRows(turned)]
  return [
    ...rowsThatHold(level, upright, spots, high, smallest),
    ...rowsThatHold(upright, level, turned, high, smallest).map(turnedBack),
  ]
}

const turnedBack = ({ x, y, width, height, angle }: FoundBox): FoundBox => ({
  x: y,
  y: -x - width,
  width: height,
  height: width,
  // Read from the bottom or the right.
  angle: angle < -2 * LEANS ? angle + 90 : angle - 90,
})

/** Boxes of the rows that may be lettering, and are not rather rows the other way. */
function rowsThatHold(
  rows: readonly SpotRow[],
  across: readonly SpotRow[],
  spots: readonly Spot[],
  usual: number,
  smallest: number,
): FoundBox[] {
  const other = new Map<number, SpotRow>()
  for (const row of across) for (const i of row.spots) other.set(i, row)
  const held = rows.flatMap((row) => {
    const high = digitHeight(row, spots)
    if (high < smallest) return []
    const counterparts = row.spots.flatMap((i) => other.get(i) ?? [])
    if (row.spots.length === 1) {
      const inRow = counterparts.some((one) => one.spots.length > 1)
      return inRow || high < LONE_LOW * usual || high > LONE_HIGH * usual ? [] : boxesOf(row, spots, high)
    }
    const rival = counterparts.filter((one) => one.spots.length >= MORE * row.spots.length)
    const gap = rival.reduce((sum, one) => sum + one.gap, 0) / Math.max(1, rival.length)
    if (rival.length > 0.7 * row.spots.length && row.gap > LOOSER * gap + 0.1) return []
    return boxesOf(row, spots, high)
  })
  return [...held, ...joined(held, usual)]
}

/** Boxes round two rows that are near: words that stand further apart in one line, and lines right under one another. */
function joined(boxes: readonly FoundBox[], usual: number): FoundBox[] {
  const level = boxes.filter(({ angle }) => angle === 0).sort((a, b) => a.x - b.x)
  const found: FoundBox[] = []
  for (const [i, a] of level.entries())
    for (const b of level.slice(i + 1)) {
      if (b.x - a.x - a.width > WORDS * usual) break
      const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
      const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
      const beside = down > 0.5 * Math.min(a.height, b.height) && across < 0.5 * usual
      const under = down < 0.4 * usual && down > -LINES * usual && across > 0.4 * Math.min(a.width, b.width)
      if (!beside && !under) continue
      const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)]
      const width = Math.max(a.x + a.width, b.x + b.width) - x
      found.push({ x, y, width, height: Math.max(a.y + a.height, b.y + b.height) - y, angle: 0 })
    }
  return found
}

/** The box of a row, with the direction it runs in; both that and level where it has few spots to tell by. */
function boxesOf(row: SpotRow, spots: readonly Spot[], high: number): FoundBox[] {
  const all = row.spots.flatMap((i) => spots[i] ?? [])
  const [left, right] = [Math.min(...all.map((s) => s.left)), Math.max(...all.map((s) => s.right))]
  const [top, bottom] = [Math.min(...all.map((s) => s.top)), Math.max(...all.map((s) => s.bottom))]
  const lean = leanOf(all.filter((s) => s.bottom - s.top > 0.4 * high))
  const odd = Math.abs(lean) > LEANS && Math.abs(lean) < STEEPEST
  const turn = ((odd ? lean : 0) * Math.PI) / 180
  const across = all.map(
    (s) => ((s.top + s.bottom) * Math.cos(turn) - (s.left + s.right) * Math.sin(turn)) / 2,
  )
  if (Math.max(...across) - Math.min(...across) > (HIGHEST - 1) * high) return []
  const room = ROOM * high
  const box = {
    x: left - room,
    y: top - room,
    width: right - left + 2 * room,
    height: bottom - top + 2 * room,
  }
  if (!odd) return [{ ...box, angle: 0 }]
  const few = all.length < SURE && bottom - top < HIGHEST * high
  return [{ ...box, angle: lean }, ...(few ? [{ ...box, angle: 0 }] : [])]
}

/** Degrees by which the middles of a row's spots go down to the right, by least squares; 0 of fewer than three. */
function leanOf(spots: readonly Spot[]): number {
  const n = spots.length
  if (n < 3) return 0
  const points = spots.map((s) => [(s.left + s.right) / 2, (s.top + s.bottom) / 2] as const)
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n
  const xx = points.reduce((sum, [x]) => sum + (x - mx) ** 2, 0)
  const xy = points.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0)
  return xx > 0 ? (Math.atan2(xy, xx) * 180) / Math.PI : 0
}
