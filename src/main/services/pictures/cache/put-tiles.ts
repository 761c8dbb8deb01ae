import { rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { systemCode } from '../../files/system-reason.ts'
import { MANIFEST, TILES } from '../layout/picture-names.ts'
import type { TileKind } from '../layout/tile-kind.ts'
import { halfMade, ownMark } from './half-made.ts'
import { type Described, type Manifest, readManifest, writeManifest } from './manifest.ts'

/**
 * Puts tiles that were cut in their place, and the manifest after them. Where another process was quicker its pictures
 * are taken: they are of the same page and made the same way.
 * @param cut a folder beside the place, with all tiles
 * @returns null when another process came in between: look again
 */
export async function putTiles(
  folder: string,
  cut: string,
  page: Described,
  kind: TileKind,
  tool: string,
): Promise<Manifest | null> {
  const there = await readManifest(folder, page)
  if (there !== null) return there
  const tiles = join(folder, TILES)
  const old = join(folder, halfMade(TILES))
  await rm(join(folder, MANIFEST), { force: true })
  try {
    await rename(tiles, old).catch(unlessMissing)
    await rename(cut, tiles)
    return await writeManifest(folder, page, kind, tool, ownMark())
  } catch (error) {
    const theirs = await readManifest(folder, page)
    if (theirs !== null || systemCode(error) === 'ENOTEMPTY' || systemCode(error) === 'EEXIST') return theirs
    throw error
  } finally {
    await rm(old, { recursive: true, force: true })
  }
}

function unlessMissing(error: unknown): void {
  if (systemCode(error) !== 'ENOENT') throw error
}
