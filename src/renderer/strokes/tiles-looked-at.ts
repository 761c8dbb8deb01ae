import { TILE } from '../../contract/picture-pyramid.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import { pixel } from '../../core/geometry/frames.ts'
import type { SearchWindow } from '../../core/imaging/index.ts'
import { type Tile, tilesOver } from '../tiles/wanted-tiles.ts'

/** From the middle of a tile to its corners, pixels. */
const CORNER = (TILE / 2) * Math.SQRT2

/**
 * The tiles of a level that a search looks at: along the stroke, not beside it.
 * @param area in pixels of the level
 */
export function tilesLookedAt(area: SearchWindow, pictures: SheetPictures, level = 0): Tile[] {
  const { box, looksWithin } = area
  const [left, top, right, bottom] = box.map((at) => at * 2 ** level) as [number, number, number, number]
  return tilesOver({ left, top, right, bottom }, level, pictures).filter(({ column, row }) =>
    looksWithin(CORNER, pixel((column + 0.5) * TILE, (row + 0.5) * TILE)),
  )
}
