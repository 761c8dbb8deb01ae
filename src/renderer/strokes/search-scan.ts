import type { SheetPictures } from '../../contract/pictures.ts'
import type { Pixel } from '../../core/geometry/frames.ts'
import { type FoundStroke, LARGEST_WINDOW, searchWindow } from '../../core/imaging/index.ts'
import { tileAddress } from '../tiles/addresses.ts'
import type { GreyTile } from '../tiles/picture-forms.ts'
import { reason } from '../words/window-words.ts'
import { cutWindow } from './cut-window.ts'
import { fetchGreys, giveUp } from './fetch-greys.ts'
import type { NotFound } from './messages.ts'
import type { SearchWish } from './search-wish.ts'
import { theSearcher } from './searcher.ts'
import { tilesLookedAt } from './tiles-looked-at.ts'

const TOO_LARGE: NotFound = { kind: 'none', because: reason('search.too-large') }

/** Milliseconds that a pick waits for its part of the scan: a large file may first have to be read through. */
const PATIENCE = 20_000

const NOT_COME: NotFound = { kind: 'none', because: reason('search.scan-not-come') }

function windowOf(rough: readonly Pixel[], { as, reach }: SearchWish, pictures: SheetPictures) {
  const area = searchWindow(rough, as, { reach, scan: pictures })
  const { box } = area
  const [left, top, right, bottom] = box
  if ((right - left) * (bottom - top) > LARGEST_WINDOW) return null
  const tiles = tilesLookedAt(area, pictures)
  return {
    addresses: tiles.map((tile) => tileAddress(pictures, tile)),
    cut: (greys: ReadonlyMap<string, GreyTile> | null) =>
      greys === null ? null : cutWindow(box, tiles, pictures, greys),
  }
}

let asked = 0

/** Looks for the stroke under picks, once its part of the scan has come. */
export async function searchScan(
  rough: readonly Pixel[],
  wish: SearchWish,
  pictures: SheetPictures,
): Promise<FoundStroke | NotFound> {
  const window = windowOf(rough, wish, pictures)
  if (window === null) return TOO_LARGE
  const who = `stroke ${++asked}`
  const patience = setTimeout(() => giveUp(who), PATIENCE)
  const grey = window.cut(await fetchGreys(who, window.addresses))
  clearTimeout(patience)
  return grey === null ? NOT_COME : theSearcher().pick(grey, rough, wish)
}

/** The same for what is under the pointer; null when that was asked of another place meanwhile. */
export async function glanceAtScan(
  at: Pixel,
  wish: SearchWish,
  pictures: SheetPictures,
): Promise<FoundStroke | NotFound | null> {
  const rough = [at]
  const window = windowOf(rough, wish, pictures)
  if (window === null) return TOO_LARGE
  const greys = await fetchGreys('stroke under the pointer', window.addresses)
  if (greys === null) return null
  const grey = window.cut(greys)
  return grey === null ? NOT_COME : theSearcher().glance(grey, rough, wish)
}
