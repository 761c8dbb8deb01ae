import type { Limits } from '../../../../contract/limits.ts'
import type { GivenScan } from '../file/given-scan.ts'
import type { DrawnFile } from '../page/drawn-file.ts'
import type { PageRead } from '../page/page-read.ts'
import { type LookedInto, READ_ANSWERS, type ReadOrder, type ReadTask } from './read-protocol.ts'
import { ReadingProcess } from './reading-process.ts'

/** The longer side of a small picture of a page, pixels, at most. */
const PAGE_THUMBNAIL_SIDE = 240

export interface ReadWith {
  limits: Limits
  password?: string | undefined
  signal?: AbortSignal | undefined
}

/** Each kind of work has a process of its own: nobody waits for a small picture, or for a page that takes minutes. */
const reading = new ReadingProcess()
const drawings = new ReadingProcess()
const thumbnails = new ReadingProcess({ newestFirst: true, finishes: true })

const orderOf = (
  { path, called }: Pick<GivenScan, 'path' | 'called'>,
  task: ReadTask,
  { limits, password }: ReadWith,
): ReadOrder => ({ path, called, limits, password, task })

/**
 * What a scan holds, from a page on, as far as can be told in a moment.
 * @throws ServiceError when it can't be read; ScanLocked when the password is wrong
 */
export const lookInto = (scan: GivenScan, from: number, how: ReadWith): Promise<LookedInto> =>
  reading.do(orderOf(scan, { do: 'look', from }, how), READ_ANSWERS.look, how.signal)

/**
 * Reads one page, from 1: decoded once, to see that it is all there.
 * @param page undefined: the first that is a sheet of its own
 * @param drawnAt dots per inch that a drawn page shall have
 * @throws ServiceError when no sheet can be made of it; ScanLocked when it wants a password
 */
export const readPage = (
  scan: Pick<GivenScan, 'path' | 'called'>,
  page: number | undefined,
  drawnAt: number | undefined,
  how: ReadWith,
): Promise<PageRead> => {
  return reading.do(orderOf(scan, { do: 'page', page, drawnAt }, how), READ_ANSWERS.page, how.signal)
}

/** A small picture of a page, JPEG. @throws ServiceError when there is none */
export const pageThumbnail = (scan: GivenScan, page: number, how: ReadWith): Promise<Uint8Array> =>
  thumbnails.do(
    orderOf(scan, { do: 'thumbnail', page, side: PAGE_THUMBNAIL_SIDE }, how),
    READ_ANSWERS.thumbnail,
    how.signal,
  )

/**
 * Makes a file of a page of a PDF, in a folder that is there.
 * @throws ServiceError when it can't be drawn; ScanLocked when it wants a password. What was begun is left in the folder.
 */
export const drawPage = (
  scan: Pick<GivenScan, 'path' | 'called'>,
  page: number,
  drawnAt: number | undefined,
  folder: string,
  how: ReadWith,
): Promise<DrawnFile> =>
  drawings.do(orderOf(scan, { do: 'draw', page, folder, drawnAt }, how), READ_ANSWERS.draw, how.signal)
