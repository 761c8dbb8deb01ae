import { pyramidLevels, TILE } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import type { GreyWindow } from '../../../src/core/imaging/index.ts'
import { findStroke } from '../../../src/renderer/strokes/find-stroke.ts'
import type { Looking } from '../../../src/renderer/strokes/search-scan.ts'
import { tileAddress } from '../../../src/renderer/tiles/addresses.ts'
import type { GreyTile } from '../../../src/renderer/tiles/picture-forms.ts'

interface Level {
  width: number
  height: number
  data: Uint8Array
}

/** Each pixel the mean of the four that it stands for; what is beyond the border is paper. */
function halved({ width, height, data }: Level): Level {
  const [w, h] = [Math.ceil(width / 2), Math.ceil(height / 2)]
  const half = new Uint8Array(w * h)
  const at = (x: number, y: number): number =>
    data[Math.min(y, height - 1) * width + Math.min(x, width - 1)] ?? 255
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const sum = at(2 * x, 2 * y) + at(2 * x + 1, 2 * y) + at(2 * x, 2 * y + 1) + at(2 * x + 1, 2 * y + 1)
      half[y * w + x] = Math.round(sum / 4)
    }
  }
  return { width: w, height: h, data: half }
}

function tileOf({ width, height, data }: Level, column: number, row: number): GreyTile {
  const [left, top] = [column * TILE, row * TILE]
  const [w, h] = [Math.min(TILE, width - left), Math.min(TILE, height - top)]
  const tile = new Uint8Array(w * h)
  for (let y = 0; y < h; y++)
    tile.set(data.subarray((top + y) * width + left, (top + y) * width + left + w), y * w)
  return { width: w, height: h, data: tile }
}

/** A scan with its coarser pictures, and a way to look for strokes in them without a window. */
export function pyramidOf(scan: GreyWindow): { pictures: SheetPictures; looking: Looking } {
  const { width, height } = scan
  const pictures: SheetPictures = {
    sheet: 'S1',
    version: 'v',
    width,
    height,
    overview: { width: 100, height: 80 },
    levels: pyramidLevels(width, height),
    exact: true,
    progress: { sheet: 'S1', state: 'ready', done: 1, sentence: '' },
  }
  const greys = new Map<string, GreyTile>()
  let level: Level = { width, height, data: Uint8Array.from(scan.data) }
  for (const { level: of, columns, rows } of pictures.levels) {
    if (of > 0) level = halved(level)
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        greys.set(tileAddress(pictures, { level: of, column, row }), tileOf(level, column, row))
      }
    }
  }
  return {
    pictures,
    looking: {
      fetch: async () => greys,
      look: async (grey, rough, wish) => findStroke(grey, rough, wish),
    },
  }
}
