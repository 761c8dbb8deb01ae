import { TILE } from '../../contract/picture-pyramid.ts'
import type { SheetPictures } from '../../contract/pictures.ts'
import type { GreyWindow, WindowBox } from '../../core/imaging/index.ts'
import { tileAddress } from '../tiles/addresses.ts'
import type { GreyTile } from '../tiles/picture-forms.ts'
import type { Tile } from '../tiles/wanted-tiles.ts'

/**
 * The scan where a search looks at it: of each tile what lies in the box. There is nothing of what lies between the tiles,
 * however large the box is.
 * @param greys of tiles, by their addresses
 * @returns null when one of them is not there
 */
export function cutWindows(
  box: WindowBox,
  tiles: readonly Tile[],
  pictures: SheetPictures,
  greys: ReadonlyMap<string, GreyTile>,
): GreyWindow[] | null {
  const windows: GreyWindow[] = []
  for (const tile of tiles) {
    const grey = greys.get(tileAddress(pictures, tile))
    if (grey === undefined) return null
    const window = cutTile(box, tile, grey)
    if (window.width > 0 && window.height > 0) windows.push(window)
  }
  return windows
}

function cutTile([left, top, right, bottom]: WindowBox, tile: Tile, grey: GreyTile): GreyWindow {
  const [x0, y0] = [tile.column * TILE, tile.row * TILE]
  const [from, to] = [Math.max(left, x0), Math.min(right, x0 + grey.width)]
  const [first, end] = [Math.max(top, y0), Math.min(bottom, y0 + grey.height)]
  const [width, height] = [Math.max(0, to - from), Math.max(0, end - first)]
  const data = new Uint8Array(width * height)
  for (let y = 0; y < height; y++) {
    const row = (first + y - y0) * grey.width + from - x0
    data.set(grey.data.subarray(row, row + width), y * width)
  }
  return { left: from, top: first, width, height, data }
}
