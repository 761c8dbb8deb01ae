import { SCAN_ADDRESS, type ScanReply } from '../../contract/scan-upload.ts'
import { ScantlingError } from '../../core/words/scantling-error.ts'
import { WindowError } from '../words/window-error.ts'
import { reason } from '../words/window-words.ts'
import { notBroughtIn } from './own-refusals.ts'
import { readScanReply } from './read-answer.ts'

/** What the host said to a scan; null when that is no JSON. */
function replyOf(text: string): ScanReply | null {
  try {
    return readScanReply(JSON.parse(text))
  } catch {
    return null
  }
}

/**
 * Sends the bytes of a scan to the local host. Not by `fetch`, which tells nothing of how far it is.
 * @returns the id by which requests name it
 * @throws ScantlingError with the reason and its sentence; a DOMException named AbortError when `signal` ended it
 */
export function sendScan(
  file: File,
  progressed: (share: number) => void,
  signal: AbortSignal,
): Promise<string> {
  return new Promise((resolve, reject) => {
    const stopped = () => reject(notBroughtIn(file.name))
    if (signal.aborted) {
      stopped()
      return
    }
    const request = new XMLHttpRequest()
    const abort = () => request.abort()
    signal.addEventListener('abort', abort)
    request.upload.onprogress = ({ loaded, total }) => progressed(total > 0 ? loaded / total : 0)
    request.onload = () => {
      const reply = replyOf(request.responseText)
      if (reply?.ok === true && reply.id !== null) resolve(reply.id)
      else if (reply?.ok === false) reject(new ScantlingError(reply.reason, reply.sentence))
      else reject(new WindowError(reason('host.scan-lost', { file: file.name })))
    }
    // A browser does not tell which of the two it was.
    request.onerror = () => reject(new WindowError(reason('host.scan-did-not-arrive', { file: file.name })))
    request.onabort = stopped
    request.onloadend = () => signal.removeEventListener('abort', abort)
    request.open('POST', `/${SCAN_ADDRESS}?name=${encodeURIComponent(file.name)}`)
    request.setRequestHeader('Content-Type', 'application/octet-stream')
    request.send(file)
  })
}
