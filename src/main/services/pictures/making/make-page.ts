import type { Manifest } from '../cache/manifest.ts'
import type { PageMaking } from './making.ts'
import { makePagePyramid } from './page-pyramid.ts'
import { makePageWhole } from './page-whole.ts'

/**
 * Makes the pictures of a page: the whole and what is made of it, and beside them the tiles, which take longer.
 * @returns null when it was stopped
 * @throws ServiceError, PyramidError or what the system refused; pictures of the whole that are there stay
 */
export async function makePage(making: PageMaking): Promise<Manifest | null> {
  const { drawn, folder, tell, signal } = making
  const file = await drawn.file(folder, (doing) => tell({ is: 'drawing', doing }), signal)
  // When the whole fails, cutting has no use any more.
  const useless = new AbortController()
  const beside = { ...making, signal: AbortSignal.any([signal, useless.signal]) }
  let pyramid: Promise<Manifest | null> | undefined
  const whole = makePageWhole(making, file, (looked) => {
    const there = whole.then(
      (made) => made !== null && !signal.aborted,
      () => false,
    )
    pyramid = makePagePyramid(beside, { ...looked, file, whole: there })
    // Told of below, when the whole is there.
    pyramid.catch(() => undefined)
  })
  try {
    const made = await whole
    if (made === null || signal.aborted || pyramid === undefined) return null
    tell({ is: 'whole', folder, file, whole: made })
    return await pyramid
  } finally {
    useless.abort()
    await pyramid?.catch(() => undefined)
  }
}
