import { readdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { type PyramidLevel, TILE } from '../../../contract/pictures.ts'
import { openPage } from './open-page.ts'
import { tilesOf } from './picture-names.ts'

const QUALITY = 90

/** Milliseconds between two looks at how many tiles are there. */
const LOOK = 200

export interface TilesWanted {
  scan: string
  page: number
  levels: readonly PyramidLevel[]
  /** An empty folder; the tiles come into folders named after their level. */
  folder: string
}

/** The library numbers the levels from the smallest. */
const below = (written: string, levels: readonly PyramidLevel[], { level }: PyramidLevel): string =>
  join(written, String(levels.length - 1 - level))

/**
 * Cuts a page into the tiles of all its levels.
 * @param progressed called now and then with the number of tiles that are written
 */
export async function cutTiles(
  { scan, page, levels, folder }: TilesWanted,
  progressed: (tiles: number) => void,
): Promise<void> {
  const written = join(folder, 'cut_files')
  const timer = setInterval(() => {
    void countTiles(written, levels).then(progressed)
  }, LOOK)
  try {
    const picture = await openPage(scan, page)
    await picture
      .jpeg({ quality: QUALITY, chromaSubsampling: '4:4:4' })
      .tile({ size: TILE, overlap: 0, layout: 'dz', depth: 'onetile', container: 'fs' })
      .toFile(join(folder, 'cut.dz'))
  } finally {
    clearInterval(timer)
  }
  for (const level of levels) await rename(below(written, levels, level), join(folder, String(level.level)))
  await rm(written, { recursive: true, force: true })
  await rm(join(folder, 'cut.dzi'), { force: true })
}

async function countTiles(written: string, levels: readonly PyramidLevel[]): Promise<number> {
  let tiles = 0
  for (const level of levels) {
    const names = await readdir(below(written, levels, level)).catch(() => [])
    tiles += Math.min(names.length, tilesOf(level))
  }
  return tiles
}
