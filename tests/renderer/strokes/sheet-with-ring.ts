import { pyramidLevels, TILE } from '../../../src/contract/picture-pyramid.ts'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import type { Pixel } from '../../../src/core/geometry/frames.ts'
import type { RandomStream } from '../../../src/core/uncertainty/random.ts'
import { findStroke } from '../../../src/renderer/strokes/find-stroke.ts'
import type { Looking } from '../../../src/renderer/strokes/search-scan.ts'
import { tileAddress } from '../../../src/renderer/tiles/addresses.ts'
import type { GreyTile } from '../../../src/renderer/tiles/picture-forms.ts'
import type { Tile } from '../../../src/renderer/tiles/wanted-tiles.ts'

const [PAPER, INK] = [214, 62] as const
/** Noises that are dealt out over and over, from another one on in each tile. */
const NOISES = 65_521

/** One round stroke on a sheet that is too large to be drawn as a whole: its tiles are drawn when they are fetched. */
export interface SheetWithRing {
  width: number
  height: number
  centre: Pixel
  radius: number
  /** Of the stroke, pixels of the scan. */
  stroke: number
  /** Of a pixel, grey values. */
  noise: number
}

/** What was fetched, by the level of the pictures. */
export interface FetchedTiles {
  tiles: number
  /** A byte a pixel, as the search has them. */
  bytes: number
}

/** A way to look for the stroke, and what it has fetched so far. */
export function sheetWithRing(
  sheet: SheetWithRing,
  random: RandomStream,
): { pictures: SheetPictures; looking: Looking; fetched: Map<number, FetchedTiles> } {
  const pictures: SheetPictures = {
    sheet: 'S1',
    version: 'v',
    width: sheet.width,
    height: sheet.height,
    overview: { width: 1000, height: 1000 },
    levels: pyramidLevels(sheet.width, sheet.height),
    exact: true,
    progress: { sheet: 'S1', state: 'ready', done: 1, sentence: '' },
  }
  const tiles = new Map<string, Tile>()
  for (const { level, columns, rows } of pictures.levels)
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++)
        tiles.set(tileAddress(pictures, { level, column, row }), { level, column, row })
  const noises = Float32Array.from({ length: NOISES }, () => sheet.noise * random.normal())
  const fetched = new Map<number, FetchedTiles>()
  const draw = (address: string): [string, GreyTile] => {
    const tile = tiles.get(address)
    const of = pictures.levels[tile?.level ?? -1]
    if (tile === undefined || of === undefined) throw new Error(`There is no picture ${address}.`)
    const [width, height] = [
      Math.min(TILE, of.width - tile.column * TILE),
      Math.min(TILE, of.height - tile.row * TILE),
    ]
    const data = drawn(sheet, tile, width, height, noises, Math.floor(NOISES * random.uniform()))
    const before = fetched.get(tile.level) ?? { tiles: 0, bytes: 0 }
    fetched.set(tile.level, { tiles: before.tiles + 1, bytes: before.bytes + data.length })
    return [address, { width, height, data }]
  }
  return {
    pictures,
    fetched,
    looking: {
      fetch: async (addresses) => new Map(addresses.map(draw)),
      look: async (windows, rough, wish) => findStroke(windows, rough, wish),
    },
  }
}

/** A tile of one level: what is narrower than its pixels is so much fainter, and blurred by them. */
function drawn(
  { centre, radius, stroke }: SheetWithRing,
  { level, column, row }: Tile,
  width: number,
  height: number,
  noises: Float32Array,
  from: number,
): Uint8Array {
  const step = 2 ** level
  const [cx, cy, far] = [centre[0] / step, centre[1] / step, radius / step]
  const half = stroke / step / 2
  const blur = Math.sqrt((0.6 / step) ** 2 + 1 / 12)
  const data = new Uint8Array(width * height)
  let n = from
  for (let y = 0; y < height; y++) {
    const dy = row * TILE + y + 0.5 - cy
    for (let x = 0; x < width; x++) {
      const dx = column * TILE + x + 0.5 - cx
      const away = Math.sqrt(dx * dx + dy * dy) - far
      const ink =
        Math.abs(away) > half + 5 * blur ? 0 : below((away + half) / blur) - below((away - half) / blur)
      n = n + 1 < NOISES ? n + 1 : 0
      data[y * width + x] = Math.round(PAPER + (INK - PAPER) * ink + (noises[n] ?? 0))
    }
  }
  return data
}

/** Share of a normal distribution below z, by the logistic of a cubic (to 2e-4). */
const below = (z: number): number => 1 / (1 + Math.exp(-z * (1.5957691 + 0.07056 * z * z)))
