import type { Manifest } from '../cache/manifest.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import { type Looked, type PageMaking, runOrder, type Whole } from './page-making.ts'
import { cutting, OVERVIEW_BEGUN } from './page-progress.ts'
import { makePagePyramid } from './page-pyramid.ts'
import { makePageWhole } from './page-whole.ts'

/**
 * Makes the pictures of a page: the whole and what is made of it, and beside them the tiles, which take longer.
 * @returns null when it was stopped
 * @throws ServiceError with a sentence, or Error whose message ends one; pictures of the whole that are there stay
 */
export async function makePage(making: PageMaking): Promise<Manifest | null> {
  const { drawn, folder, tell, signal, page } = making
  const drawing = (sentence: string): void => {
    tell({ ...OVERVIEW_BEGUN, sentence })
    making.drawing()
  }
  const file = await drawn.file(folder, drawing, signal)
  let [isBegun, count] = [false, 0]
  const cut = (tiles: number): void => {
    count = tiles
    const progress = cutting(page, count)
    making.tiles.cut(progress.done)
    if (isBegun) tell(progress)
  }
  let pyramid: Promise<Manifest | null> | undefined
  let hasWhole: (has: boolean) => void = () => undefined
  const whole = new Promise<boolean>((resolve) => {
    hasWhole = resolve
  })
  // When the whole fails, cutting has no use any more.
  const useless = new AbortController()
  const beside = { ...making, signal: AbortSignal.any([signal, useless.signal]) }
  try {
    const made = await makePageWhole(making, file, (looked) => {
      making.looked(looked.kind)
      pyramid = makePagePyramid(beside, { ...looked, file, whole, cut })
      // Told of below, when the whole is there.
      pyramid.catch(() => undefined)
    })
    if (made === null || signal.aborted || pyramid === undefined) return null
    isBegun = true
    beginTiles(making, file, made)
    hasWhole(true)
    tell(cutting(page, count))
    return await pyramid
  } finally {
    hasWhole(false)
    useless.abort()
    await pyramid?.catch(() => undefined)
  }
}

/** From now on tiles can be asked for, and are made out of turn where that is sooner. */
function beginTiles(making: PageMaking, file: PageInFile, whole: Whole): void {
  const { tiles, folder, page } = making
  const { kind, took }: Looked & { took: number } = whole
  tiles.begin({
    file,
    kind,
    folder,
    read: took,
    make: (block, into, made) => {
      const wanted = { file, kind, levels: page.levels, folder: into, block }
      return runOrder(making, { make: 'block', wanted }, (message) => {
        if (message.kind === 'block') made(message.files)
      })
    },
  })
  making.begun(whole)
}
