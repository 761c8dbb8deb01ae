import type { PageLook } from '../../../../contract/scan-look.ts'
import { ServiceError } from '../../service-error.ts'
import { inWords, reason } from '../../words/services-words.ts'
import { scanFormat } from '../file/scan-format.ts'
import { ScanLocked } from '../file/scan-locked.ts'
import type { PageFound, PageRead } from '../page/page-read.ts'
import { openPdfScan, type PdfScan } from '../pdf/pdf-scan.ts'
import { mustDecode } from '../raster/must-decode.ts'
import { openRasterScan } from '../raster/raster-scan.ts'
import { rasterThumbnail } from '../raster/raster-thumbnail.ts'
import type { LookedInto, ReadAnswers, ReadOrder, ReadTask } from './read-protocol.ts'

/** Milliseconds after which a look ends with the pages that it has. */
const MOMENT = 2500

interface OpenScan {
  format: LookedInto['format']
  pages: number
  leftOut: ReadonlySet<number>
  read: (page: number, drawnAt?: number) => Promise<PageFound>
  pdf?: PdfScan
}

async function openScan({ path, called, limits, password }: ReadOrder): Promise<OpenScan> {
  const format = await scanFormat(path, called)
  if (format !== 'pdf') return openRasterScan({ path, called, format, limits })
  const pdf = await openPdfScan({ path, called, limits, ...(password === undefined ? {} : { password }) })
  return { format, pages: pdf.pages, leftOut: new Set(), read: pdf.read, pdf }
}

/**
 * Does what the process that reads scans was told to.
 * @throws ServiceError with a sentence that names the scan
 */
export function readTask(order: ReadOrder): Promise<ReadAnswers[keyof ReadAnswers]> {
  const { task } = order
  switch (task.do) {
    case 'look':
      return look(order, task)
    case 'page':
      return readPage(order, task)
    case 'thumbnail':
      return thumbnail(order, task)
    case 'draw':
      return draw(order, task)
  }
}

type TaskOf<D extends ReadTask['do']> = Extract<ReadTask, { do: D }>

async function look(order: ReadOrder, { from }: TaskOf<'look'>): Promise<LookedInto> {
  let scan: OpenScan
  try {
    scan = await openScan(order)
  } catch (error) {
    if (!(error instanceof ScanLocked) || order.password !== undefined) throw error
    return { format: 'pdf', locked: true, pages: 0, looked: [] }
  }
  const { format, pages, leftOut } = scan
  const looked: LookedInto['looked'] = []
  const until = performance.now() + MOMENT
  const last = Math.min(pages, order.limits.pages)
  for (let page = from; page <= last && (looked.length === 0 || performance.now() < until); page++) {
    if (!leftOut.has(page)) looked.push(lookOf(await scan.read(page)))
  }
  const none = leftOut.size === 0 ? {} : { leftOut: [...leftOut] }
  return { format, locked: false, pages, ...none, looked }
}

/** What a window is told of a page. */
const lookOf = ({ facts, fault }: PageFound): PageLook => ({
  ...facts,
  ...(fault === undefined ? {} : { fault: inWords(fault) }),
})

/** The first page that is a sheet of its own. */
function firstOf({ leftOut }: OpenScan): number {
  let page = 1
  while (leftOut.has(page)) page++
  return page
}

function mustHavePage({ called, limits }: ReadOrder, pages: number, page: number): void {
  if (page > pages) {
    throw new ServiceError(reason('page.not-there', { scan: called, pages, page }))
  }
  if (page <= limits.pages) return
  throw new ServiceError(reason('page.beyond-the-limit', { scan: called, page, most: limits.pages }))
}

async function readPage(order: ReadOrder, { page: named, drawnAt }: TaskOf<'page'>): Promise<PageRead> {
  const scan = await openScan(order)
  const page = named ?? firstOf(scan)
  mustHavePage(order, scan.pages, page)
  const read = await scan.read(page, drawnAt)
  if (read.fault !== undefined) throw new ServiceError(read.fault)
  if (scan.pdf === undefined) await mustDecode(order.path, order.called, page, scan.format)
  const { format, pages, facts, remarks } = read
  return { format, pages, facts, remarks }
}

async function thumbnail(order: ReadOrder, { page, side }: TaskOf<'thumbnail'>): Promise<Uint8Array> {
  const { path, called } = order
  const scan = await openScan(order)
  mustHavePage(order, scan.pages, page)
  if (scan.pdf !== undefined) return scan.pdf.thumbnail(page, side)
  const { fault } = await scan.read(page)
  if (fault !== undefined) throw new ServiceError(fault)
  try {
    return await rasterThumbnail(path, page, side)
  } catch {
    throw new ServiceError(reason('page.not-shown', { scan: called, page }))
  }
}

async function draw(
  order: ReadOrder,
  { page, drawnAt, folder }: TaskOf<'draw'>,
): Promise<ReadAnswers['draw']> {
  const scan = await openScan(order)
  mustHavePage(order, scan.pages, page)
  if (scan.pdf === undefined) throw new ServiceError(reason('page.not-drawn', { scan: order.called }))
  return scan.pdf.draw(page, folder, drawnAt)
}
