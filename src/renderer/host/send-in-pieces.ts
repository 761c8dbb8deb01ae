import { DESKTOP_ORIGIN } from '../../contract/message-bridge.ts'
import { SCAN_ADDRESS, SCAN_PIECE_BYTES, type ScanReply } from '../../contract/scan-upload.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { WindowError } from '../words/window-error.ts'
import { reason } from '../words/window-words.ts'
import { notBroughtIn } from './own-refusals.ts'
import { readScanReply } from './read-answer.ts'

const lost = (file: string): WindowError => new WindowError(reason('host.scan-lost', { file }))

/**
 * Hands a scan over to the desktop host piece by piece, so that progress can be shown and no more than one piece is
 * in memory.
 * @param progressed called with the share that is over, 0 to 1
 * @returns the id by which requests name it
 * @throws ScantlingError with the reason and its sentence when the host refuses it or is gone or the file can't be
 *   read; a DOMException named AbortError when `signal` ended it
 */
export async function sendInPieces(
  file: Blob & { name: string },
  progressed: (share: number) => void,
  signal: AbortSignal,
): Promise<string> {
  const upload = crypto.randomUUID()
  const of = Math.max(1, Math.ceil(file.size / SCAN_PIECE_BYTES))
  try {
    for (let piece = 0; ; piece++) {
      const bytes = await readPiece(file, piece)
      const answer = await sendPiece({ name: file.name, upload, piece, of }, bytes, signal)
      if (!answer.ok) throw new ScantlingError(answer.reason, answer.sentence)
      progressed((piece + 1) / of)
      if (answer.id !== null) return answer.id
      if (piece + 1 === of) throw lost(file.name)
    }
  } catch (error) {
    // Whatever went wrong, the host need not wait for the rest.
    await fetch(scanAddress({ upload }), { method: 'DELETE' }).catch(() => undefined)
    if (signal.aborted) throw notBroughtIn(file.name)
    throw error
  }
}

async function readPiece(file: Blob & { name: string }, piece: number): Promise<ArrayBuffer> {
  try {
    return await file.slice(piece * SCAN_PIECE_BYTES, (piece + 1) * SCAN_PIECE_BYTES).arrayBuffer()
  } catch {
    throw new WindowError(reason('host.scan-out-of-reach', { file: file.name }))
  }
}

async function sendPiece(
  query: { name: string; upload: string; piece: number; of: number },
  body: ArrayBuffer,
  signal: AbortSignal,
): Promise<ScanReply> {
  signal.throwIfAborted()
  try {
    const response = await fetch(scanAddress(query), { method: 'POST', body, signal })
    return readScanReply(await response.json())
  } catch {
    throw lost(query.name)
  }
}

function scanAddress(query: Record<string, string | number>): string {
  const search = new URLSearchParams()
  for (const [name, value] of Object.entries(query)) search.set(name, String(value))
  return `${DESKTOP_ORIGIN}/${SCAN_ADDRESS}?${search}`
}
