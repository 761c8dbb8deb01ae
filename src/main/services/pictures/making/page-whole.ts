import { nameItemIn } from '../../../../core/words/name-in.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { hasSize, otherSize } from '../../scans/page/same-size.ts'
import { ServiceError } from '../../service-error.ts'
import { reason } from '../../words/services-words.ts'
import { ownMark, removeOwn } from '../cache/half-made.ts'
import { WHOLE, wholeSizes } from '../cache/manifest.ts'
import { PyramidError } from '../faults/pyramid-error.ts'
import type { PyramidNews } from '../process/pyramid-protocol.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import type { Looked, PageMaking, Whole } from './making.ts'

/**
 * Has the pictures of the whole made, unless they are there.
 * @param looked called when it is known how the tiles are kept, long before the pictures are there
 * @returns null when it was stopped
 * @throws ServiceError when the page has other pixels than the job says, PyramidError when they could not be made
 */
export async function makePageWhole(
  { folder, page, whole, signal, tell }: PageMaking,
  file: PageInFile,
  looked: (looked: Looked) => void,
): Promise<Whole | null> {
  const known = (found: Looked): void => {
    tell({ is: 'looked', kind: found.kind })
    looked(found)
  }
  if (whole !== undefined && (await hasWhole(folder))) {
    known(whole)
    tell({ is: 'overview', folder })
    return whole
  }
  const began = performance.now()
  const size = { width: page.scan.width, height: page.scan.height }
  const found: { looked?: Looked; size?: PixelSize; took?: number } = {}
  const heard = (news: PyramidNews): void => {
    if (news.kind === 'page') {
      found.size = news.size
      if (!hasSize(news.size, size)) return
      found.looked = { kind: news.page, tool: news.tool }
      known(found.looked)
    } else if (news.kind === 'overview') {
      found.took = performance.now() - began
      tell({ is: 'overview', folder })
    }
  }
  const { memory } = page.limits()
  const wanted = { file, size, mark: ownMark(), folder }
  try {
    if ((await page.make({ make: 'whole', wanted }, { memory, signal, heard })) === null) return null
  } finally {
    // A process that was killed had no time to clear up.
    await removeOwn(folder, WHOLE)
  }
  if (found.size !== undefined && !hasSize(found.size, size)) {
    const named = { scan: page.scan.file, page: null, sheet: page.sheet.id }
    throw new ServiceError(nameItemIn(otherSize(named, found.size, size), page.sheet))
  }
  if (found.looked === undefined || found.took === undefined)
    throw new PyramidError(reason('pyramid.no-whole'))
  return { ...found.looked, took: found.took }
}

const hasWhole = (folder: string): Promise<boolean> =>
  wholeSizes(folder).then(
    () => true,
    () => false,
  )
