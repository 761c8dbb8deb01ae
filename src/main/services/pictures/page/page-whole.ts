import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { hasSize, mustHaveSize } from '../../scans/page/pixel-size.ts'
import { ownMark, removeOwn } from '../cache/half-made.ts'
import { WHOLE, wholeSizes } from '../cache/manifest.ts'
import type { FromPyramid } from '../process/pyramid-messages.ts'
import type { PageInFile } from '../pyramid/open-page.ts'
import { type Looked, type PageMaking, runOrder, type Whole } from './page-making.ts'

/**
 * Has the pictures of the whole made, unless they are there.
 * @param looked called when it is known how the tiles are kept, long before the pictures are there
 * @returns null when it was stopped
 * @throws ServiceError when the page has other pixels than the job says, or Error whose message ends a sentence
 */
export async function makePageWhole(
  making: PageMaking,
  file: PageInFile,
  looked: (looked: Looked) => void,
): Promise<Whole | null> {
  const { folder, page, whole } = making
  if (whole !== undefined && (await hasWhole(folder))) {
    looked(whole)
    making.overviewed()
    return whole
  }
  const began = performance.now()
  const size = { width: page.scan.width, height: page.scan.height }
  const found: { looked?: Looked; size?: PixelSize; took?: number } = {}
  const told = (message: FromPyramid): void => {
    if (message.kind === 'page') {
      found.size = message.size
      if (!hasSize(message.size, size)) return
      found.looked = { kind: message.page, tool: message.tool }
      looked(found.looked)
    } else if (message.kind === 'overview') {
      found.took = performance.now() - began
      making.overviewed()
    }
  }
  const wanted = { file, size, mark: ownMark(), folder }
  try {
    if ((await runOrder(making, { make: 'whole', wanted }, told).ended) === 'stopped') return null
  } finally {
    // A process that was killed had no time to clear up.
    await removeOwn(folder, WHOLE)
  }
  if (found.size !== undefined)
    mustHaveSize(`The scan ${page.scan.file} of sheet ${page.sheet}`, found.size, size)
  if (found.looked === undefined || found.took === undefined)
    throw new Error('the picture of the whole was not made')
  return { ...found.looked, took: found.took }
}

const hasWhole = (folder: string): Promise<boolean> =>
  wholeSizes(folder).then(
    () => true,
    () => false,
  )
