import { DESKTOP_ORIGIN } from '../../contract/message-bridge.ts'
import { SCAN_ADDRESS, type ScanReply } from '../../contract/scan-upload.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { KEPT_FOR_GOOD, NEVER_KEPT, PAGE_HEADERS } from '../services/page/headers.ts'
import type { PageFiles } from '../services/page/page-files.ts'
import { inWords, reason, type ServiceReason } from '../services/words/services-words.ts'
import { refusedFor } from '../services/workbench/refuse.ts'
import type { DesktopWorkbench } from './desktop-workbench.ts'
import type { Log } from './log.ts'
import { ownAddress } from './own-address.ts'
import type { ScanPieces } from './scan-pieces.ts'

export interface PageSources {
  files: PageFiles
  workbench: Pick<DesktopWorkbench, 'picture'>
  scans: ScanPieces
  log: Log
}

/** Answers what the page fetches: its own files, pictures of sheets, and the pieces of scans that it hands over. */
export async function answerPage(request: Request, sources: PageSources): Promise<Response> {
  const { log } = sources
  try {
    const url = ownAddress(request.url)
    const origin = request.headers.get('origin')
    if (url === null || (origin !== null && origin !== DESKTOP_ORIGIN)) {
      return refused(403, reason('page.foreign'), request, log)
    }
    if (url.pathname === `/${SCAN_ADDRESS}`) return await answerScan(request, url, sources)
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return refused(405, reason('page.takes-nothing'), request, log)
    }
    const file = sources.files.get(url.pathname === '' ? '/' : url.pathname)
    if (file !== undefined) return answer(200, file.bytes, file.type, NEVER_KEPT)
    // As far as is known, Electron tells of a request that was dropped only while its answer is being sent.
    const picture = await sources.workbench.picture(url.pathname.slice(1), request.signal)
    if (picture === null) return refused(404, reason('page.nothing-there'), request, log)
    return answer(200, new Uint8Array(picture.bytes), picture.type, KEPT_FOR_GOOD)
  } catch (error) {
    log('failed to answer', `${request.url} (${String(error)})`)
    return answer(500, inWords(reason('page.fault')), TEXT, NEVER_KEPT)
  }
}

async function answerScan(request: Request, url: URL, { scans, log }: PageSources): Promise<Response> {
  if (request.method === 'DELETE') {
    scans.abandon(url.searchParams.get('upload') ?? '')
    return inJson(200, { ok: true, id: null })
  }
  if (request.method !== 'POST') return refused(405, reason('page.scan-by-post'), request, log)
  try {
    const id = await scans.take(url.searchParams, new Uint8Array(await request.arrayBuffer()))
    return inJson(200, { ok: true, id })
  } catch (error) {
    if (!(error instanceof ScantlingError)) throw error
    log('refused a scan', error.message)
    return inJson(400, refusedFor(error.reason))
  }
}

const TEXT = 'text/plain; charset=utf-8'

function refused(status: number, why: ServiceReason, request: Request, log: Log): Response {
  log(`refused ${request.method} with ${status}`, request.url)
  return answer(status, inWords(why), TEXT, NEVER_KEPT)
}

const inJson = (status: number, value: ScanReply): Response =>
  answer(status, JSON.stringify(value), 'application/json; charset=utf-8', NEVER_KEPT)

function answer(
  status: number,
  body: string | Uint8Array<ArrayBuffer>,
  type: string,
  kept: string,
): Response {
  return new Response(body, {
    status,
    headers: { ...PAGE_HEADERS, 'Content-Type': type, 'Cache-Control': kept },
  })
}
