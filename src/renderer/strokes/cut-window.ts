import { TILE } from '../../contract/picture-pyramid.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import type { GreyWindow, WindowBox } from '../../core/imaging/index.ts'
import { tileAddress } from '../tiles/addresses.ts'
import type { GreyTile } from '../tiles/picture-forms.ts'
import type { Tile } from '../tiles/wanted-tiles.ts'

/**
 * A window of the scan put together from the tiles that are looked at. Beside them, where no search looks, it is white.
 * @param greys of tiles, by their addresses
 * @returns null when one of them is not there
 */
export function cutWindow(
  [left, top, right, bottom]: WindowBox,
  tiles: readonly Tile[],
  pictures: SheetPictures,
  greys: ReadonlyMap<string, GreyTile>,
): GreyWindow | null {
  const [width, height] = [right - left, bottom - top]
  const data = new Uint8Array(width * height).fill(255)
  for (const tile of tiles) {
    const grey = greys.get(tileAddress(pictures, tile))
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
