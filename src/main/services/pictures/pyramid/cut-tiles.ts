import { mkdir, readdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { TILE } from '../../../../contract/picture-pyramid.ts'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import { areaOf, type Block, levelsOfBlock, type PageArea } from '../layout/block.ts'
import { cutFolder, tileFile, tilesOf } from '../layout/picture-names.ts'
import { JPEG, PNG } from '../layout/tile-format.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import { openPage, type PageInFile } from './open-page.ts'

/** Milliseconds between two looks at how many tiles are there. */
const LOOK = 200

export interface TilesWanted {
  file: PageInFile
  kind: TileKind
  levels: readonly PyramidLevel[]
  /** An empty folder; the tiles come into folders named after their level. */
  folder: string
}

/**
 * Cuts a page into the tiles of all its levels.
 * @param progressed called now and then with the number of tiles that are written
 */
export async function cutTiles(wanted: TilesWanted, progressed: (tiles: number) => void): Promise<void> {
  const { levels, folder, kind } = wanted
  let counting = false
  const count = async (): Promise<void> => {
    if (counting) return
    counting = true
    progressed(await countTiles(folder, levels))
    counting = false
  }
  const timer = setInterval(() => void count(), LOOK)
  try {
    await cut(wanted.file, kind, folder)
  } finally {
    clearInterval(timer)
  }
  for (const { level } of levels) {
    await rename(cutFolder(folder, levels.length, level), join(folder, String(level)))
  }
  await removeRest(folder)
}

export interface BlockWanted extends TilesWanted {
  block: Block
}

/**
 * Cuts a block of tiles, and the finer ones that lie within it, just as `cutTiles` would.
 * @returns the tiles' files below the folder
 */
export async function cutBlock({ file, kind, levels, folder, block }: BlockWanted): Promise<string[]> {
  const [page] = levels
  if (page === undefined) return []
  const area = areaOf(block, page)
  await cut(file, kind, folder, area)
  const files: string[] = []
  for (const { level, columns, rows } of levels.slice(0, block.level + 1)) {
    const finer = 2 ** (block.level - level)
    const from = cutFolder(folder, levelsOfBlock(area), level)
    await mkdir(join(folder, String(level)))
    for (let row = block.rows[0] * finer; row < Math.min(rows, block.rows[1] * finer); row++) {
      for (
        let column = block.columns[0] * finer;
        column < Math.min(columns, block.columns[1] * finer);
        column++
      ) {
        const tile = tileFile({ level, column, row }, kind.type)
        const own = `${column - block.columns[0] * finer}_${row - block.rows[0] * finer}.${kind.type}`
        await rename(join(from, own), join(folder, tile))
        files.push(tile)
      }
    }
  }
  await removeRest(folder)
  return files
}

async function cut(file: PageInFile, kind: TileKind, folder: string, area?: PageArea): Promise<void> {
  const page = await openPage(file, kind)
  const part = area === undefined ? page : page.extract(area)
  const kept = kind.type === 'png' ? part.png(PNG) : part.jpeg(JPEG)
  await kept
    .tile({ size: TILE, overlap: 0, layout: 'dz', depth: 'onetile', container: 'fs' })
    .toFile(join(folder, 'cut.dz'))
}

async function removeRest(folder: string): Promise<void> {
  await rm(join(folder, 'cut_files'), { recursive: true, force: true })
  await rm(join(folder, 'cut.dzi'), { force: true })
}

async function countTiles(folder: string, levels: readonly PyramidLevel[]): Promise<number> {
  let tiles = 0
  for (const level of levels) {
    const names = await readdir(cutFolder(folder, levels.length, level.level)).catch(() => [])
    tiles += Math.min(names.length, tilesOf(level))
  }
  return tiles
}
