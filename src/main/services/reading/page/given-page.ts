import { basename } from 'node:path'
import { pageFile } from '../../scans/kept/page-file.ts'
import type { PixelSize } from '../../scans/page/pixel-size.ts'
import { type ReadWith, readPage } from '../../scans/reader/read-scan.ts'
import type { PagePart } from '../../words/page-in-words.ts'
import type { PageSource } from './page-source.ts'

/** A page of a scan that is of no job. */
export interface GivenPage {
  /** What messages call it. */
  page: PagePart
  size: PixelSize
  /** Pixels to the inch, where the file says. */
  dpi: number | undefined
  source: PageSource
}

/**
 * Opens a page of a scan, of which only the pixels are wanted.
 * @param page from 1; undefined: the first that is a sheet of its own
 * @param drawnAt dots per inch that a drawn page shall have
 * @param folder makes an empty one for what is drawn
 * @throws ServiceError when it can't be read; ScanLocked when it wants a password
 */
export async function openGivenPage(
  path: string,
  page: number | undefined,
  drawnAt: number | undefined,
  folder: () => Promise<string>,
  { limits, password, signal }: ReadWith,
): Promise<GivenPage> {
  const called = basename(path)
  const { facts, pages } = await readPage({ path, called }, page, drawnAt, { limits, password, signal })
  const until = signal ?? new AbortController().signal
  const file = await pageFile(path, facts, {
    folder: await folder(),
    ...(password === undefined ? {} : { password }),
    limits,
    signal: until,
  })
  const size = { width: facts.width, height: facts.height }
  return {
    page: { scan: called, page: pages === 1 ? null : facts.page },
    size,
    dpi: facts.dpi,
    source: { size, from: { is: 'file', file } },
  }
}
