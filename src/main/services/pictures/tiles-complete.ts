import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { PyramidLevel } from '../../../contract/pictures.ts'
import { tileFile, tilesOf } from './picture-names.ts'

/** Whether every tile of every level is in the folder, and none is empty. */
export async function tilesComplete(folder: string, levels: readonly PyramidLevel[]): Promise<boolean> {
  try {
    for (const level of levels) {
      const names = await readdir(join(folder, String(level.level)))
      if (names.length < tilesOf(level)) return false
      for (let row = 0; row < level.rows; row++) {
        for (let column = 0; column < level.columns; column++) {
          const { size } = await stat(join(folder, tileFile(level.level, column, row)))
          if (size === 0) return false
        }
      }
    }
    return true
  } catch {
    return false
  }
}
