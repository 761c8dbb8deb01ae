import { join } from 'node:path'
import { LRUCache } from 'lru-cache'
import { TILE } from '../../../../contract/picture-pyramid.ts'
import type { GreyWindow } from '../../../../core/imaging/index.ts'
import type { PageArea } from '../../pictures/layout/block.ts'
import { tileFile } from '../../pictures/layout/picture-names.ts'
import type { TileKind } from '../../pictures/layout/tile-kind.ts'
import type { GreyPage } from './grey-page.ts'
import { rawGreys } from './raw-greys.ts'

/** Tiles that are kept: figures that are read one after another often lie on the same. A quarter of a megabyte each. */
const KEPT = 64

type Greys = Awaited<ReturnType<typeof rawGreys>>

/** A page whose tiles are there. */
export class TilesPage implements GreyPage {
  readonly #folder: string
  readonly #type: TileKind['type']
  readonly #tiles = new LRUCache<string, Promise<Greys>>({ max: KEPT })

  /** @param folder of the tiles, each level in a folder named after it */
  constructor(folder: string, type: TileKind['type']) {
    this.#folder = folder
    this.#type = type
  }

  /** @throws Error when a tile can't be read */
  async greys({ left, top, width, height }: PageArea, level: number): Promise<GreyWindow> {
    const data = new Uint8Array(width * height)
    const [right, bottom] = [left + width, top + height]
    for (let row = Math.floor(top / TILE); row * TILE < bottom; row++) {
      for (let column = Math.floor(left / TILE); column * TILE < right; column++) {
        const tile = await this.#tile(tileFile({ level, column, row }, this.#type))
        const [x0, x1] = [Math.max(left, column * TILE), Math.min(right, column * TILE + tile.width)]
        for (let y = Math.max(top, row * TILE); y < Math.min(bottom, row * TILE + tile.height); y++) {
          const from = (y - row * TILE) * tile.width - column * TILE
          data.set(tile.data.subarray(from + x0, from + x1), (y - top) * width + x0 - left)
        }
      }
    }
    return { left, top, width, height, data }
  }

  #tile(file: string): Promise<Greys> {
    const known = this.#tiles.get(file)
    if (known !== undefined) return known
    const read = readTile(join(this.#folder, file))
    this.#tiles.set(file, read)
    read.catch(() => this.#tiles.delete(file))
    return read
  }
}

async function readTile(path: string): Promise<Greys> {
  const { default: sharp } = await import('sharp')
  return rawGreys(sharp(path, { failOn: 'error' }))
}
