import type { GreyWindow } from '../../imaging/window/grey-window.ts'
import type { Ink } from '../../imaging/window/ink.ts'
import { linkRows, type SpotRow } from './link-rows.ts'
import { sheetInk } from './sheet-ink.ts'
import { type Spot, takeSpots } from './spots.ts'
import { eraseRulings } from './without-rulings.ts'

/** A box that may hold a figure: upright round it, in pixels of the picture's page. */
export interface FoundBox {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** Degrees clockwise by which what is in it is turned, as it is read from the bottom or the right. */
  readonly angle: number
}

/** What to look for. */
export interface FindingOptions {
  /** Least and most height of a digit, pixels of the picture; 8 to 64 unless given. */
  readonly smallest?: number
  readonly largest?: number
  /** Which way ink differs from its ground; found out unless given. */
  readonly ink?: Ink
}

/** Spots of fewer pixels than this are specks. */
const SPECK = 4
/** A row that leans by more than this is at an odd angle, degrees; with fewer spots than so many it may yet be level. */
const [LEANS, SURE] = [6, 6]
/** A row is no higher than so many times its digits: two rows of a fraction, and some room. */
const HIGHEST = 3.4
/** A row whose neighbours stand so much further apart than those of the rows across it is none. */
const LOOSER = 1.35
/** Lone glyphs are within these shares of what most are high. */
const [LONE_LOW, LONE_HIGH] = [0.6, 1.7]
/** Room round a row, in heights of its digits. */
const ROOM = 0.2

/**
 * Boxes of a picture that may hold a figure: rows of spots as large as glyphs, level, upright or leaning, after long level
 * and upright lines were taken out. Many hold something else; whoever reads them tells.
 */
export function findFigureBoxes(picture: GreyWindow, options: FindingOptions = {}): FoundBox[] {
  const { smallest = 8, largest = 64 } = options
  const { width, height } = picture
  const ink = options.ink === undefined ? sheetInk(picture) : sheetInk(picture, options.ink)
  eraseRulings(ink, width, height, { longest: 1.5 * largest, thickest: Math.max(5, smallest) })
  const spots = takeSpots(ink, width, height, 1.6 * largest).filter(({ pixels }) => pixels >= SPECK)
  const turned = spots.map(turnedSpot)
  const [level, upright] = [linkRows(spots), linkRows(turned)]
  const high = usualHeight(spots, turned, level, upright)
  const found = [
    ...rowsThatHold(level, upright, spots, high, smallest),
    ...rowsThatHold(upright, level, turned, high, smallest).map(turnedBack),
  ]
  return found.map((box) => ({ ...box, x: box.x + picture.left, y: box.y + picture.top }))
}

/** As it is seen from the right of the page: x runs up the page, y to its right. */
const turnedSpot = ({ left, top, right, bottom, pixels }: Spot): Spot => ({
  left: -bottom,
  right: -top,
  top: left,
  bottom: right,
  pixels,
})

const turnedBack = ({ x, y, width, height, angle }: FoundBox): FoundBox => ({
  x: y,
  y: -x - width,
  width: height,
  height: width,
  angle: angle - 90,
})

/** Height of most glyphs that stand in rows of three or more. */
function usualHeight(
  spots: readonly Spot[],
  turned: readonly Spot[],
  level: readonly SpotRow[],
  upright: readonly SpotRow[],
): number {
  const heights = [
    ...level.filter((row) => row.spots.length >= 3).map((row) => digitHeight(row, spots)),
    ...upright.filter((row) => row.spots.length >= 3).map((row) => digitHeight(row, turned)),
  ].sort((a, b) => a - b)
  return heights[heights.length >> 1] ?? 0
}

/** Height of a row's digits: that which few of its spots exceed. */
function digitHeight(row: SpotRow, spots: readonly Spot[]): number {
  const heights = row.spots.map((i) => (spots[i]?.bottom ?? 0) - (spots[i]?.top ?? 0)).sort((a, b) => a - b)
  return heights[Math.floor(0.8 * (heights.length - 1))] ?? 0
}

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
  return rows.flatMap((row) => {
    const high = digitHeight(row, spots)
    if (high < smallest) return []
    const counterparts = row.spots.flatMap((i) => other.get(i) ?? [])
    if (row.spots.length === 1) {
      const inRow = counterparts.some((one) => one.spots.length > 1)
      return inRow || high < LONE_LOW * usual || high > LONE_HIGH * usual ? [] : boxesOf(row, spots, high)
    }
    const rival = counterparts.filter((one) => one.spots.length >= row.spots.length)
    const gap = rival.reduce((sum, one) => sum + one.gap, 0) / Math.max(1, rival.length)
    if (rival.length > 0.7 * row.spots.length && row.gap > LOOSER * gap + 0.1) return []
    return boxesOf(row, spots, high)
  })
}

/** The box of a row, with the direction it runs in; both that and level where it has few spots to tell by. */
function boxesOf(row: SpotRow, spots: readonly Spot[], high: number): FoundBox[] {
  const all = row.spots.flatMap((i) => spots[i] ?? [])
  const [left, right] = [Math.min(...all.map((s) => s.left)), Math.max(...all.map((s) => s.right))]
  const [top, bottom] = [Math.min(...all.map((s) => s.top)), Math.max(...all.map((s) => s.bottom))]
  const lean = leanOf(all.filter((s) => s.bottom - s.top > 0.4 * high))
  const odd = Math.abs(lean) > LEANS
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
