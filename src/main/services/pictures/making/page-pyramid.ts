import { mkdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { reason } from '../../words/services-words.ts'
import { halfMade } from '../cache/half-made.ts'
import { type Manifest, readManifest } from '../cache/manifest.ts'
import { putTiles } from '../cache/put-tiles.ts'
import { tileSizes } from '../cache/tile-sizes.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
import { TILES } from '../layout/picture-names.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import type { Looked, PageMaking } from './making.ts'

/** Other processes that make the same pictures come in between at most so often. */
const TRIES = 3

export interface Pyramid extends Looked {
  file: PageInFile
  /** Resolves when the pictures of the whole are there, which the tiles are put beside; false: they won't come. */
  whole: Promise<boolean>
}

/**
 * Has a page cut into tiles when it is its turn.
 * @returns null when it was stopped
 * @throws PyramidError when it could not be cut
 */
export async function makePagePyramid(making: PageMaking, pyramid: Pyramid): Promise<Manifest | null> {
  const { page, folder, signal } = making
  const attempt = async (): Promise<Manifest | 'again' | null> => {
    const manifest = (await readManifest(folder, page)) ?? (await cut(making, pyramid))
    return manifest ?? (signal.aborted || !(await pyramid.whole) ? null : 'again')
  }
  for (let i = 0; i < TRIES; i++) {
    const made = await page.queue.do(attempt, signal).catch((error: unknown) => {
      if (signal.aborted) return null
      throw error
    })
    if (made !== 'again') return made
  }
  throw new PyramidError(reason('pyramid.others-write'))
}

async function cut({ page, folder, signal, tell }: PageMaking, pyramid: Pyramid): Promise<Manifest | null> {
  const { file, kind, tool } = pyramid
  const temporary = join(folder, halfMade(TILES))
  await mkdir(temporary)
  try {
    tell({ is: 'cutting', into: temporary })
    const size = { width: page.scan.width, height: page.scan.height }
    const made = await page.make(
      { make: 'tiles', wanted: { file, kind, size, folder: temporary } },
      {
        memory: page.limits().memory,
        signal,
        heard: (news) => {
          if (news.kind === 'tiles') tell({ is: 'cut', tiles: news.tiles })
        },
      },
    )
    if (made === null) return null
    if ((await tileSizes(temporary, page.levels, kind.type)) === null)
      throw new PyramidError(reason('pyramid.tile-missing'))
    if (!(await pyramid.whole)) return null
    return await putTiles(folder, temporary, page, kind, tool)
  } finally {
    tell({ is: 'cutting', into: null })
    await rm(temporary, { recursive: true, force: true })
  }
}
