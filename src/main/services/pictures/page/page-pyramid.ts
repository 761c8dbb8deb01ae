import { mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { halfMade } from '../cache/half-made.ts'
import { type Manifest, readManifest } from '../cache/manifest.ts'
import { putTiles } from '../cache/put-tiles.ts'
import { tileSizes } from '../cache/tile-sizes.ts'
import { TILES } from '../layout/picture-names.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import { type Looked, type PageMaking, runOrder } from './page-making.ts'

/** Other processes that make the same pictures come in between at most so often. */
const TRIES = 3

export interface Pyramid extends Looked {
  file: PageInFile
  /** Resolves when the pictures of the whole are there, which the tiles are put beside; false: they won't come. */
  whole: Promise<boolean>
  /** @param tiles that are cut */
  cut: (tiles: number) => void
}

/**
 * Has a page cut into tiles when it is its turn.
 * @returns null when it was stopped
 * @throws Error whose message ends a sentence
 */
export async function makePagePyramid(making: PageMaking, pyramid: Pyramid): Promise<Manifest | null> {
  const { page, folder, signal } = making
  for (let i = 0; i < TRIES; i++) {
    const end = await page.turns.take(signal)
    if (end === null) return null
    try {
      const manifest = (await readManifest(folder, page)) ?? (await cut(making, pyramid))
      if (manifest !== null || signal.aborted) return manifest
      if (!(await pyramid.whole)) return null
    } finally {
      end()
    }
  }
  throw new Error('other processes write into the same folder')
}

async function cut(making: PageMaking, pyramid: Pyramid): Promise<Manifest | null> {
  const { page, folder, tiles } = making
  const { levels } = page
  const { file, kind, tool } = pyramid
  const temporary = join(folder, halfMade(TILES))
  await mkdir(temporary)
  try {
    tiles.cutInto(temporary)
    const wanted = { file, kind, levels, folder: temporary }
    const running = runOrder(making, { make: 'tiles', wanted }, (message) => {
      if (message.kind === 'tiles') pyramid.cut(message.tiles)
    })
    if ((await running.ended) === 'stopped') return null
    if ((await tileSizes(temporary, levels, kind.type)) === null)
      throw new Error('not every tile was written')
    if (!(await pyramid.whole)) return null
    return await putTiles(folder, temporary, page, kind, tool)
  } finally {
    tiles.cutInto(undefined)
    await rm(temporary, { recursive: true, force: true })
  }
}
