import type { SheetPictures } from '../../contract/pictures.ts'
import type { Extent } from '../camera/camera.ts'
import { overviewAddress, tileAddress } from './addresses.ts'
import { keptPictures } from './the-pictures.ts'
import { type Tile, tileExtent, tilesOver } from './wanted-tiles.ts'

/** The finest level all of whose tiles over a box are there; null: only the overview. */
export function finestThere(box: Extent, pictures: SheetPictures): number | null {
  const isThere = (tile: Tile): boolean => keptPictures.has(tileAddress(pictures, tile), 'bitmap')
  return pictures.levels.find(({ level }) => tilesOver(box, level, pictures).every(isThere))?.level ?? null
}

/** Draws a box of the scan from one level; the context's unit is the pixel of the scan. */
export function drawFrom(
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D,
  box: Extent,
  level: number | null,
  pictures: SheetPictures,
): void {
  const of = level === null ? undefined : pictures.levels[level]
  if (level === null || of === undefined) {
    const overview = keptPictures.get(overviewAddress(pictures), 'bitmap')
    if (overview !== undefined) context.drawImage(overview, 0, 0, pictures.width, pictures.height)
    return
  }
  for (const tile of tilesOver(box, level, pictures)) {
    const picture = keptPictures.get(tileAddress(pictures, tile), 'bitmap')
    const on = tileExtent(tile, of)
    if (picture) context.drawImage(picture, on.left, on.top, on.right - on.left, on.bottom - on.top)
  }
}
