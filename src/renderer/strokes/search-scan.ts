import { TILE } from '../../contract/picture-pyramid.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import { type Pixel, pixel } from '../../core/geometry/frames.ts'
import {
  type FoundStroke,
  type GreyWindow,
  LARGEST_WINDOW,
  type StrokeCircle,
  searchWindow,
} from '../../core/imaging/index.ts'
import { tileAddress } from '../tiles/addresses.ts'
import type { GreyTile } from '../tiles/picture-forms.ts'
import { reason } from '../words/window-words.ts'
import { cutWindows } from './cut-windows.ts'
import { fetchGreys, giveUp } from './fetch-greys.ts'
import { aroundCoarse, inScan } from './from-afar.ts'
import type { NotFound } from './messages.ts'
import { LEAST_REACH, levelOfReach } from './reach.ts'
import { scaledStroke } from './scaled-stroke.ts'
import type { SearchWish } from './search-wish.ts'
import { theSearcher } from './searcher.ts'
import { tilesLookedAt } from './tiles-looked-at.ts'

const none = (because: NotFound['because']): NotFound => ({ kind: 'none', because })

const TWO_STROKES = none(reason('search.two-strokes'))

const TOO_LARGE = none(reason('search.too-large'))

/** Milliseconds that a pick waits for its part of the scan: a large file may first have to be read through. */
const PATIENCE = 20_000

const NOT_COME = none(reason('search.scan-not-come'))

/** One way to have windows of the scan and look into them; null: it is not wanted any more. */
export interface Looking {
  fetch(addresses: readonly string[]): Promise<ReadonlyMap<string, GreyTile> | null>
  look(
    windows: readonly GreyWindow[],
    rough: readonly Pixel[],
    wish: SearchWish,
  ): Promise<FoundStroke | NotFound | null>
}

/**
 * Looks into the pictures of one level.
 * @param rough in pixels of the level, as the reach of the wish is
 */
async function lookAt(
  level: number,
  rough: readonly Pixel[],
  wish: SearchWish,
  pictures: SheetPictures,
  looking: Looking,
): Promise<FoundStroke | NotFound | null> {
  const scan = pictures.levels[level] ?? pictures
  const area = searchWindow(rough, wish.as, { reach: wish.reach, scan })
  const tiles = tilesLookedAt(area, pictures, level)
  if (tiles.length * TILE ** 2 > LARGEST_WINDOW) return TOO_LARGE
  const greys = await looking.fetch(tiles.map((tile) => tileAddress(pictures, tile)))
  if (greys === null) return null
  const windows = cutWindows(area.box, tiles, pictures, greys)
  return windows === null ? NOT_COME : looking.look(windows, rough, wish)
}

/** A stroke with where it was looked for at last, pixels of the scan. */
export interface Sought {
  found: FoundStroke | NotFound
  rough: readonly Pixel[]
}

/** Strokes closer to each other than this share of a reach can't be told apart by a hand. Common practice, no source. */
const WITHIN = 0.75

/**
 * From far off, what lies further from a pick than this share of a reach may be the nearest that is seen, and another that
 * is too faint there the one that is meant: a hand comes within a few pixels of the screen. Common practice, no source.
 */
const SURELY = 0.7

/** How far the places lie from where they were pointed at, at most, pixels. */
const furthest = (places: readonly Pixel[], rough: readonly Pixel[]): number =>
  Math.max(...places.map(([x, y], i) => Math.hypot(x - (rough[i]?.[0] ?? x), y - (rough[i]?.[1] ?? y))))

/**
 * Looks for a stroke: in the scan as it is, or where it is pointed at from far off first in a picture about as coarse as it
 * is seen there, and then in the scan near what was found. Where two strokes are one from so far off, nobody can say which
 * is meant, and none is taken.
 */
export async function lookInStages(
  rough: readonly Pixel[],
  wish: SearchWish,
  pictures: SheetPictures,
  looking: Looking,
): Promise<Sought | null> {
  if (wish.as === 'end') return lookForEnd(rough, wish, pictures, looking)
  const level = levelOfReach(wish.reach, pictures)
  if (level === null) return { found: none(reason('search.too-far-off')), rough }
  if (level === 0) {
    const found = await lookFinest(rough, wish, pictures, looking)
    return found && { found, rough }
  }
  const step = 2 ** level
  const there = rough.map(([x, y]) => pixel(x / step, y / step))
  const roughly = { ...wish, reading: 'centre' as const, reach: wish.reach / step }
  const coarse = await lookAt(level, there, roughly, pictures, looking)
  if (coarse === null) return null
  if (coarse.kind === 'none') return { found: none(inScan(coarse.because, step)), rough }
  const { places, as } = aroundCoarse(coarse, there, step)
  if (furthest(places, rough) > SURELY * wish.reach) return { found: TWO_STROKES, rough }
  const finely = { ...wish, as, either: false, reach: step, alone: WITHIN * wish.reach }
  const found = await lookFinest(places, finely, pictures, looking)
  return found && { found, rough: places }
}

/** CSS pixels that a stroke may lie from a pick are so many pixels of the picture that an end is looked for in. */
const END_REACH = 8
/** So many coarser pictures are looked into for a larger end. */
const COARSER = 2

/**
 * Looks for a round end from one place on it: first in a picture about as coarse as it is seen, for that tells how large it
 * is, where none is there in coarser ones; then for its arc in the scan as it is.
 */
async function lookForEnd(
  rough: readonly Pixel[],
  wish: SearchWish,
  pictures: SheetPictures,
  looking: Looking,
): Promise<Sought | null> {
  const seen = levelOfReach(wish.reach, pictures)
  if (seen === null) return { found: none(reason('search.too-far-off')), rough }
  const asSeen = Math.max(0, Math.ceil(Math.log2(wish.reach / END_REACH)))
  const first = Math.min(asSeen, pictures.levels.length - 1)
  let missed: FoundStroke | NotFound | null = null
  for (const { level } of pictures.levels.slice(first, first + COARSER + 1)) {
    const step = 2 ** level
    const reach = Math.max(LEAST_REACH, wish.reach / step)
    const reading = level === 0 ? wish.reading : 'centre'
    const there = rough.map(([x, y]) => pixel(x / step, y / step))
    const found = await lookAt(level, there, { ...wish, reach, reading }, pictures, looking)
    if (found === null) return null
    if (found.kind !== 'arc') {
      missed ??= found.kind === 'none' ? none(inScan(found.because, step)) : found
      continue
    }
    const places = alongArc(found).map(([x, y]) => pixel(x * step, y * step))
    if (level === 0) return { found, rough: places }
    if (seen > 0 && asideOfArc(there, found) * step > SURELY * wish.reach)
      return { found: TWO_STROKES, rough }
    const finely = {
      ...wish,
      as: 'arc' as const,
      either: false,
      reach: step,
      ...(seen === 0 ? {} : { alone: WITHIN * wish.reach }),
    }
    const arc = await lookFinest(places, finely, pictures, looking)
    return arc && { found: arc, rough: places }
  }
  return { found: missed?.kind === 'none' ? missed : none(reason('search.too-far-off')), rough }
}

/** How far places lie beside an arc at most, pixels. */
const asideOfArc = (places: readonly Pixel[], { centre, radius }: StrokeCircle): number =>
  Math.max(...places.map(([x, y]) => Math.abs(Math.hypot(x - centre[0], y - centre[1]) - radius)))

/** Where an arc begins, its middle and its end. */
function alongArc({ profiles }: StrokeCircle): Pixel[] {
  const kept = profiles.filter((profile) => profile.kept).map(({ centre }) => centre)
  return [kept[0], kept[Math.floor(kept.length / 2)], kept.at(-1)].filter((place) => place !== undefined)
}

/** Looks into the scan as it is, or what goes round more of it than can be looked over into the finest picture of it that can. */
async function lookFinest(
  rough: readonly Pixel[],
  wish: SearchWish,
  pictures: SheetPictures,
  looking: Looking,
): Promise<FoundStroke | NotFound | null> {
  for (const { level } of pictures.levels) {
    const step = 2 ** level
    const there = rough.map(([x, y]) => pixel(x / step, y / step))
    const near = {
      ...wish,
      reach: Math.max(LEAST_REACH, wish.reach / step),
      ...(wish.alone === undefined ? {} : { alone: wish.alone / step }),
    }
    const found = await lookAt(level, there, near, pictures, looking)
    if (found === TOO_LARGE) continue
    return found === null || found.kind === 'none' ? found : scaledStroke(found, step)
  }
  return TOO_LARGE
}

let asked = 0

/** Looks for the stroke under picks, once its part of the scan has come. */
export async function searchScan(
  rough: readonly Pixel[],
  wish: SearchWish,
  pictures: SheetPictures,
): Promise<Sought> {
  const sought = await lookInStages(rough, wish, pictures, {
    fetch: async (addresses) => {
      const who = `stroke ${++asked}`
      const patience = setTimeout(() => giveUp(who), PATIENCE)
      const greys = await fetchGreys(who, addresses)
      clearTimeout(patience)
      return greys
    },
    look: (windows, at, how) => theSearcher().pick(windows, at, how),
  })
  return sought ?? { found: NOT_COME, rough }
}

/** The same for what is under the pointer; null when that was asked of another place meanwhile. */
export async function glanceAtScan(
  at: Pixel,
  wish: SearchWish,
  pictures: SheetPictures,
): Promise<FoundStroke | NotFound | null> {
  const sought = await lookInStages([at], wish, pictures, {
    fetch: (addresses) => fetchGreys('stroke under the pointer', addresses),
    look: (windows, rough, how) => theSearcher().glance(windows, rough, how),
  })
  return sought?.found ?? null
}
