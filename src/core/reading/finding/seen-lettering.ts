import type { GreyWindow } from '../../imaging/index.ts'
import type { GlyphReader } from '../box/glyph-reader.ts'
import { type Edges, glyphEdges } from '../glyphs/edges.ts'
import { heightOfMost } from '../glyphs/height-of-most.ts'
import type { SeenGlyph } from '../glyphs/seen-glyph.ts'
import { surenessOf } from '../glyphs/sureness.ts'
import { isDigit, isTall } from '../layout/placed-glyph.ts'
import { withoutDuplicates } from '../layout/without-duplicates.ts'
import { BEST_HEIGHT } from '../network/best-height.ts'
import { coveringWindows } from './covering-windows.ts'
import { edgesInFrame, type Frame, frameAt } from './frame.ts'
import { neighboursAmong } from './glyph-neighbours.ts'
import { leaningPlaces } from './leaning-places.ts'
import { type FindingOptions, letteringSpots } from './lettering-spots.ts'
import { sweep } from './sweep.ts'

/** Glyphs of a page that are read in one direction, in pixels of the page as its frame has it. */
export interface SeenLettering {
  readonly frame: Frame
  readonly glyphs: readonly SeenGlyph[]
  /** Height of most digits, pixels. */
  readonly high: number
}

/** All that was seen of a sheet. */
export interface SheetLettering {
  readonly ways: readonly SeenLettering[]
  /** Spots of ink as large as glyphs or their parts, on the page. */
  readonly spots: readonly Edges[]
  /** Height of most digits, pixels of the page. */
  readonly high: number
}

/** So many windows are looked at first for how high digits are; so many sure glyphs tell, of heights within this factor. */
const [PROBED, TELLING, MOST_OFF] = [24, 6, 1.9]
/** Digits are tried so many times as high as spots tell; so many times as much must be seen for another to be right. */
const [PROBED_AT, MORE] = [[1, 1.7, 2.8], 1.3]
/** A spot may be a glyph of full height from so many times the height of most digits to so many. */
const [LEAST_SIDE, MOST_SIDE] = [0.45, 2.6]
/** Thinner than this and longer than that, it is what is left of a line. */
const [THIN, LONG] = [0.2, 1.4]
/** Room round what a window covers, in heights of digits. */
const ROOM = 0.9
/** A window has no longer side, in pixels of the network's field. */
const LONGEST = 420
/** So sure, each of so many glyphs in a row tells that lettering runs this way. */
const [SURE, ENOUGH] = [0.7, 3]
/** What is less likely there is left out. */
const LEAST_PRESENT = 0.12
/**
 * Looks for glyphs wherever a picture has ink as large as they are: level, then what is not explained by that as it is
 * read from the right, and rows of spots that lean as they lean.
 */
export function seenLettering(
  reader: GlyphReader,
  picture: GreyWindow,
  options: FindingOptions = {},
): SheetLettering {
  const found = letteringSpots(picture, options)
  const onPage = ({ left, top, right, bottom }: Edges): Edges => ({
    left: left + picture.left,
    top: top + picture.top,
    right: right + picture.left,
    bottom: bottom + picture.top,
  })
  const whole = found.spots.map(onPage)
  const seenAt = (frame: Frame, boxes: readonly Edges[], high: number, most?: number): SeenGlyph[] => {
    const scale = BEST_HEIGHT / high
    const windows = coveringWindows(
      boxes.map((box) => edgesInFrame(box, frame)),
      { room: ROOM * high, longest: LONGEST / scale },
    )
    return sweep(reader, picture, frame, most === undefined ? windows : someOf(windows, most), scale)
  }
  const probes = PROBED_AT.map((factor) => {
    const assumed = factor * found.high
    const boxes = whole.filter((spot) => isOfGlyph(spot, assumed))
    return {
      assumed,
      seen: inRows(sureAmong(seenAt(frameAt(0), boxes, assumed, PROBED))).filter(isUnlikeLines),
    }
  })
  // Hatching and dashes may outnumber digits: it is right where most is surely seen.
  const best = probes.reduce((most, one) => (one.seen.length > MORE * most.seen.length ? one : most))
  const high = heightSeen(best.seen, best.assumed)
  const spots = whole.filter((spot) => isOfGlyph(spot, high))
  const look = (frame: Frame, boxes: readonly Edges[]): SeenLettering => ({
    frame,
    glyphs: withoutDuplicates(seenAt(frame, boxes, high).filter(({ present }) => present >= LEAST_PRESENT)),
    high,
  })
  const level = look(frameAt(0), spots)
  const explained = explainedBy(level)
  const upright = look(
    frameAt(-90),
    spots.filter((spot) => !explained(spot)),
  )
  const standing = explainedBy(upright)
  const left = spots.filter((spot) => !explained(spot) && !standing(edgesInFrame(spot, upright.frame)))
  const leaning = leaningPlaces(picture, left, high).map(({ spots: some, angle }) =>
    look(frameAt(angle), some),
  )
  return { ways: [level, upright, ...leaning], spots: whole, high }
}

/** Some of many, evenly. */
const someOf = <T>(all: readonly T[], most: number): T[] =>
  all.filter((_, i) => Math.floor((i * most) / all.length) !== Math.floor(((i - 1) * most) / all.length))

/**
 * Height of full digits by what was seen of some: spots tell of those of fractions and of hatching as well. It is only
 * heeded where enough was seen.
 */
function heightSeen(glyphs: readonly SeenGlyph[], high: number): number {
  // Titles and notes are often larger than figures: digits tell, where there are enough.
  const digits = glyphs.filter(({ alternatives }) => isDigit(alternatives[0]?.text ?? ''))
  const telling = digits.length < TELLING ? glyphs : digits
  if (telling.length < TELLING) return high
  const most = heightOfMost(telling.map(({ height }) => height)) ?? high
  return Math.min(MOST_OFF * high, Math.max(high / MOST_OFF, most))
}

const sureAmong = (glyphs: readonly SeenGlyph[]): SeenGlyph[] =>
  glyphs.filter((glyph) => isTall(glyph.alternatives[0]?.text ?? '') && surenessOf(glyph) > SURE)

/** Those that have another of about their height close beside them: what is seen in hatching and noise stands alone. */
const inRows = (glyphs: readonly SeenGlyph[]): SeenGlyph[] =>
  glyphs.filter((a) =>
    glyphs.some((b) => {
      const high = Math.max(a.height, b.height)
      const [across, down] = [Math.abs(a.centre[0] - b.centre[0]), Math.abs(a.centre[1] - b.centre[1])]
      return a !== b && across < 1.5 * high && down < 0.5 * high && Math.min(a.height, b.height) > 0.55 * high
    }),
  )

/** Lines and rounds of any height look like some glyphs, which then tell nothing of it. */
const isUnlikeLines = ({ alternatives }: SeenGlyph): boolean =>
  !'01ILOCJTV7'.includes(alternatives[0]?.text ?? '')

function isOfGlyph({ left, top, right, bottom }: Edges, high: number): boolean {
  const [long, thin] = [Math.max(right - left, bottom - top), Math.min(right - left, bottom - top)]
  if (long < LEAST_SIDE * high || long > MOST_SIDE * high) return false
  return long < LONG * high || thin > THIN * high
}

/** Whether a spot is one of a row of glyphs that were surely seen. */
function explainedBy({ glyphs, high }: SeenLettering): (spot: Edges) => boolean {
  const edges = sureAmong(glyphs).map(glyphEdges)
  const rows = new Map<number, number>()
  const { rootOf } = neighboursAmong(edges, high, (a, b, gap) => {
    const shared = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
    return gap < 0.6 * high && shared > 0.5 * Math.min(a.bottom - a.top, b.bottom - b.top)
  })
  for (const i of edges.keys()) rows.set(rootOf(i), (rows.get(rootOf(i)) ?? 0) + 1)
  const told = edges.filter((_, i) => (rows.get(rootOf(i)) ?? 0) >= ENOUGH)
  const cells = new Map<string, Edges[]>()
  const key = (x: number, y: number): string => `${Math.floor(x / (4 * high))} ${Math.floor(y / (4 * high))}`
  for (const one of told) {
    const at = key((one.left + one.right) / 2, (one.top + one.bottom) / 2)
    cells.set(at, [...(cells.get(at) ?? []), one])
  }
  return ({ left, top, right, bottom }) => {
    const [x, y] = [(left + right) / 2, (top + bottom) / 2]
    const near = [-1, 0, 1].flatMap((i) =>
      [-1, 0, 1].flatMap((j) => cells.get(key(x + i * 4 * high, y + j * 4 * high)) ?? []),
    )
    return near.some((one) => x > one.left && x < one.right && y > one.top && y < one.bottom)
  }
}
