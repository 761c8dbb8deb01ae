import { TILE } from '../../contract/picture-pyramid.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import { pixel } from '../../core/geometry/frames.ts'
import type { SearchWindow } from '../../core/imaging/index.ts'
import { type Tile, tilesOver } from '../tiles/wanted-tiles.ts'

/** From the middle of a tile to its corners, pixels. */
const CORNER = (TILE / 2) * Math.SQRT2

/** The tiles of the scan as it is that a search looks at: along the stroke, not beside it. */
export function tilesLookedAt({ box, looksWithin }: SearchWindow, pictures: SheetPictures): Tile[] {
  const [left, top, right, bottom] = box
  return tilesOver({ left, top, right, bottom }, 0, pictures).filter(({ column, row }) =>
    looksWithin(CORNER, pixel((column + 0.5) * TILE, (row + 0.5) * TILE)),
  )
}
