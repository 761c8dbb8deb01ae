import { join } from 'node:path'
import type { PictureWanted } from '../../../../contract/picture-addresses.ts'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import type { Sheet } from '../../../../core/job/model/types.ts'
import type { TilePlace } from './block.ts'
import type { TileKind } from './tile-kind.ts'

/** Changes when pictures are made another way, so that old ones are not taken for new. */
export const MAKE = 'v2'

const PREFIX = 16

const prefix = ({ sha256 }: Sheet['scan']): string => sha256.toLowerCase().slice(0, PREFIX)

/** A page that is drawn has other pixels at each resolution. */
const drawn = ({ drawnAt }: Sheet['scan']): string => (drawnAt === undefined ? '' : `-d${drawnAt}`)

/** Names one page of one scan. Only for a scan whose SHA-256 was found right, so that it is hexadecimal. */
export const pictureVersion = (scan: Sheet['scan']): string =>
  `${prefix(scan)}-${scan.page}${drawn(scan)}-${MAKE}`

/** The folder below `.cache` for the pictures of one page of one scan. */
export const pictureFolderName = (scan: Sheet['scan']): string =>
  `${prefix(scan)}-p${scan.page}${drawn(scan)}-${MAKE}`

/** Any folder that was ever named so. */
export const PICTURE_FOLDER = /^[0-9a-f]{16}-p\d+(?:-d[\d.e+-]+)?-v\d+$/

export const OVERVIEW = 'overview.jpg'
export const THUMBNAIL = 'thumbnail.jpg'
export const GROUND = 'ground.png'
export const TILES = 'tiles'
export const MANIFEST = 'manifest.json'

/** A tile's file below the folder of tiles. */
export const tileFile = ({ level, column, row }: TilePlace, type: TileKind['type']): string =>
  join(String(level), `${column}_${row}.${type}`)

/** Where the library puts a level while it cuts; it numbers them from the smallest. */
export const cutFolder = (folder: string, levels: number, level: number): string =>
  join(folder, 'cut_files', String(levels - 1 - level))

/** Where a tile is while the library cuts. */
export const cutFile = (
  folder: string,
  levels: number,
  { level, column, row }: TilePlace,
  type: TileKind['type'],
): string => join(cutFolder(folder, levels, level), `${column}_${row}.${type}`)

export const tilesOf = ({ columns, rows }: PyramidLevel): number => columns * rows

/** Whether the pyramid has such a tile. */
export const hasTile = (levels: readonly PyramidLevel[], { level, column, row }: TilePlace): boolean => {
  const found = levels[level]
  return found !== undefined && column < found.columns && row < found.rows
}

/** The file and media type of a picture of the whole sheet. */
export function wholeFile(kind: Exclude<PictureWanted['kind'], 'tile'>): { file: string; type: string } {
  switch (kind) {
    case 'overview':
      return { file: OVERVIEW, type: 'image/jpeg' }
    case 'thumbnail':
      return { file: THUMBNAIL, type: 'image/jpeg' }
    case 'ground':
      return { file: GROUND, type: 'image/png' }
  }
}
