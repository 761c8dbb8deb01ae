import { TILE } from '../../contract/picture-pyramid.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import type { GreyWindow, WindowBox } from '../../core/imaging/index.ts'
import { tileAddress } from '../tiles/addresses.ts'
import type { DecodedPicture } from '../tiles/picture-cache.ts'
import type { Tile } from '../tiles/wanted-tiles.ts'

/** Grey values of one tile, row by row. */
export interface GreyTile extends DecodedPicture {
  data: Uint8Array
}

/** Luminance of RGBA pixels (ITU-R BT.709 weights of the values as stored); of grey ones the grey itself. */
export function luminance(rgba: ArrayLike<number>): Uint8Array {
  const grey = new Uint8Array(rgba.length / 4)
  for (let i = 0, at = 0; i < grey.length; i++, at += 4) {
    grey[i] = Math.round(
      0.2126 * (rgba[at] as number) + 0.7152 * (rgba[at + 1] as number) + 0.0722 * (rgba[at + 2] as number),
    )
  }
  return grey
}

/** The tiles of the scan as it is that a box lies on. */
export function tilesOfBox([left, top, right, bottom]: WindowBox, pictures: SheetPictures): Tile[] {
  const of = pictures.levels[0]
  if (of === undefined) return []
  const tiles: Tile[] = []
  for (let row = Math.max(0, Math.floor(top / TILE)); row * TILE < bottom && row < of.rows; row++) {
    for (let column = Math.max(0, Math.floor(left / TILE)); column * TILE < right; column++) {
      if (column >= of.columns) break
      tiles.push({ level: 0, column, row })
    }
  }
  return tiles
}

/**
 * A window of the scan put together from the tiles that are looked at. Beside them, where no search looks, it is white.
 * @returns null when one of them is not there
 */
export function cutWindow(
  [left, top, right, bottom]: WindowBox,
  tiles: readonly Tile[],
  pictures: SheetPictures,
  greyOf: (address: string) => GreyTile | undefined,
): GreyWindow | null {
  const [width, height] = [right - left, bottom - top]
  const data = new Uint8Array(width * height).fill(255)
  for (const tile of tiles) {
    const grey = greyOf(tileAddress(pictures, tile))
    if (grey === undefined) return null
    const [x0, y0] = [tile.column * TILE, tile.row * TILE]
    const [from, to] = [Math.max(left, x0), Math.min(right, x0 + grey.width)]
    for (let y = Math.max(top, y0); y < Math.min(bottom, y0 + grey.height); y++) {
      const row = (y - y0) * grey.width - x0
      if (to > from) data.set(grey.data.subarray(row + from, row + to), (y - top) * width + from - left)
    }
  }
  return { left, top, width, height, data }
}
