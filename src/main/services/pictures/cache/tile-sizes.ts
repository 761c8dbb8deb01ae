import { stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { PyramidLevel } from '../../../../contract/pictures.ts'
import { tileFile } from '../layout/picture-names.ts'
import type { TileKind } from '../layout/tile-kind.ts'

/**
 * Bytes of every tile of every level in the folder, each level row by row.
 * @returns null when one is missing or empty
 */
export async function tileSizes(
  folder: string,
  levels: readonly PyramidLevel[],
  type: TileKind['type'],
): Promise<number[][] | null> {
  try {
    return await Promise.all(levels.map((level) => sizesOfLevel(folder, level, type)))
  } catch {
    return null
  }
}

async function sizesOfLevel(
  folder: string,
  { level, columns, rows }: PyramidLevel,
  type: TileKind['type'],
): Promise<number[]> {
  const sizes: number[] = []
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const entry = await stat(join(folder, tileFile({ level, column, row }, type)))
      if (!entry.isFile() || entry.size === 0) throw new Error('a tile is missing')
      sizes.push(entry.size)
    }
  }
  return sizes
}
