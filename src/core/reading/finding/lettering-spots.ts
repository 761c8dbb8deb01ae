import type { GreyWindow, Ink } from '../../imaging/index.ts'
import { linkRows, type SpotRow } from './link-rows.ts'
import { sheetInk } from './sheet-ink.ts'
import { type Spot, takeSpots } from './spots.ts'
import { eraseRulings } from './without-rulings.ts'

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
/** From so many times the height of most digits to so many a spot is as large as a point, or a fraction that hangs together. */
const [SMALL, LARGE] = [0.1, 3]

/** Spots of ink that may be lettering, and how high most digits are by them: pixels of the picture. */
export interface LetteringSpots {
  readonly spots: readonly Spot[]
  readonly high: number
}

/** What is left of a picture's ink as large as glyphs, after long level and upright lines were taken out. */
export function letteringSpots(picture: GreyWindow, options: FindingOptions = {}): LetteringSpots {
  const { smallest = 8, largest = 64 } = options
  const { width, height } = picture
  const ink = options.ink === undefined ? sheetInk(picture) : sheetInk(picture, options.ink)
  eraseRulings(ink, width, height, { longest: 1.5 * largest, thickest: Math.max(5, smallest) })
  const all = takeSpots(ink, width, height, 1.6 * largest).filter(({ pixels }) => pixels >= SPECK)
  const high = usualHeight(all, smallest)
  const spots = all.filter(({ left, right, top, bottom }) => {
    const side = Math.max(right - left, bottom - top)
    return side > SMALL * high && side < LARGE * high
  })
  return { spots, high }
}

/** As it is seen from the right of the page: x runs up the page, y to its right. */
export const turnedSpot = ({ left, top, right, bottom, pixels }: Spot): Spot => ({
  left: -bottom,
  right: -top,
  top: left,
  bottom: right,
  pixels,
})

/** Height of the digits of most rows of three or more. */
function usualHeight(all: readonly Spot[], smallest: number): number {
  const heights = [all, all.map(turnedSpot)]
    .flatMap((spots) =>
      linkRows(spots).flatMap((row) => (row.spots.length >= 3 ? [digitHeight(row, spots)] : [])),
    )
    .filter((high) => high >= smallest)
    .sort((a, b) => a - b)
  return heights[heights.length >> 1] ?? Math.max(1, ...all.map(({ top, bottom }) => bottom - top))
}

/** Height of a row's digits: that which few of its spots exceed. */
export function digitHeight(row: SpotRow, spots: readonly Spot[]): number {
  const heights = row.spots.map((i) => (spots[i]?.bottom ?? 0) - (spots[i]?.top ?? 0)).sort((a, b) => a - b)
  return heights[Math.floor(0.8 * (heights.length - 1))] ?? 0
}
