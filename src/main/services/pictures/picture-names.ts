import { join } from 'node:path'
import type { PictureWanted, PyramidLevel } from '../../../contract/pictures.ts'
import type { Sheet } from '../../../core/job/types.ts'

/** Changes when pictures are made another way, so that old ones are not taken for new. */
const MAKE = 'v1'

const PREFIX = 16

const prefix = ({ sha256 }: Sheet['scan']): string => sha256.toLowerCase().slice(0, PREFIX)

/** Names one page of one scan. Only for a scan whose SHA-256 was found right, so that it is hexadecimal. */
export const pictureVersion = (scan: Sheet['scan']): string => `${prefix(scan)}-${scan.page}`

/** The folder below `.cache` for the pictures of one page of one scan. */
export const pictureFolderName = (scan: Sheet['scan']): string => `${prefix(scan)}-p${scan.page}-${MAKE}`

export const OVERVIEW = 'overview.jpg'
export const THUMBNAIL = 'thumbnail.jpg'
export const GROUND = 'ground.png'
export const TILES = 'tiles'

/** What follows `tiles` while they are being cut. */
export const HALF_MADE = /^tiles\.[0-9a-f]{16}\.tmp$/

/** A tile's file below the folder of tiles. */
export const tileFile = (level: number, column: number, row: number): string =>
  join(String(level), `${column}_${row}.jpeg`)

export const tilesOf = ({ columns, rows }: PyramidLevel): number => columns * rows

/** Where a picture is below its sheet's folder, and its media type; null for a tile beyond the edges. */
export function pictureFile(
  wanted: PictureWanted,
  levels: readonly PyramidLevel[],
): { file: string; type: string } | null {
  switch (wanted.kind) {
    case 'overview':
      return { file: OVERVIEW, type: 'image/jpeg' }
    case 'thumbnail':
      return { file: THUMBNAIL, type: 'image/jpeg' }
    case 'ground':
      return { file: GROUND, type: 'image/png' }
    case 'tile': {
      const level = levels[wanted.level]
      if (level === undefined || wanted.column >= level.columns || wanted.row >= level.rows) return null
      return { file: join(TILES, tileFile(wanted.level, wanted.column, wanted.row)), type: 'image/jpeg' }
    }
  }
}
