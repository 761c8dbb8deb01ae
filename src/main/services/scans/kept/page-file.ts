import { basename } from 'node:path'
import type { Limits } from '../../../../contract/limits.ts'
import type { Sheet } from '../../../../core/job/model/types.ts'
import { scanFormat } from '../file/scan-format.ts'
import { mustHaveSize } from '../page/same-size.ts'
import { drawPage } from '../reader/read-scan.ts'

export interface PageFileOf {
  /** An empty folder for what is drawn. */
  folder: string
  password?: string
  limits: Limits
  signal: AbortSignal
}

/** What tells a page of a scan, and what it is drawn as. */
export type PageOfScan = Pick<Sheet['scan'], 'page' | 'width' | 'height' | 'drawnAt'>

/**
 * A file that holds the page of a sheet and that sharp can open: the scan itself, or, of a PDF, a file made in
 * `folder`: the very pixels of the scan on the page where it is one, else the page drawn at `scan.drawnAt`.
 * @throws ServiceError with a sentence; ScanLocked when it wants a password. Whatever was begun is left in `folder`.
 */
export async function pageFile(
  path: string,
  scan: PageOfScan,
  { folder, password, limits, signal }: PageFileOf,
): Promise<{ path: string; page: number }> {
  const called = basename(path)
  if ((await scanFormat(path, called)) !== 'pdf') return { path, page: scan.page }
  const drawn = await drawPage({ path, called }, scan.page, scan.drawnAt, folder, {
    limits,
    password,
    signal,
  })
  mustHaveSize({ scan: called, page: scan.page }, drawn, scan)
  return { path: drawn.path, page: 1 }
}
