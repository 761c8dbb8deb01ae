import { SCAN_ADDRESS } from '../../contract/message-bridge.ts'
import { GONE } from './gone.ts'
import { notBroughtIn } from './not-brought-in.ts'

/** What the host said to a scan, whatever it is that came back. */
function answerOf(text: string): { id?: string; sentence?: string } {
  try {
    const { id, sentence } = JSON.parse(text) as Record<string, unknown>
    return {
      ...(typeof id === 'string' ? { id } : {}),
      ...(typeof sentence === 'string' ? { sentence } : {}),
    }
  } catch {
    return {}
  }
}

/**
 * Sends the bytes of a scan to the local host. Not by `fetch`, which tells nothing of how far it is.
 * @returns the id by which asks name it
 * @throws Error with a sentence; a DOMException named AbortError when `signal` ended it
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
      const { id, sentence } = answerOf(request.responseText)
      if (id !== undefined) resolve(id)
      else reject(new Error(sentence ?? `"${file.name}" could not be brought in. ${GONE}`))
    }
    // A browser does not tell which of the two it was.
    request.onerror = () =>
      reject(
        new Error(
          `"${file.name}" did not arrive, and nothing of it was kept: either the file was moved or changed, or the ` +
            'workbench no longer answers. Choose it again.',
        ),
      )
    request.onabort = stopped
    request.onloadend = () => signal.removeEventListener('abort', abort)
    request.open('POST', `/${SCAN_ADDRESS}?name=${encodeURIComponent(file.name)}`)
    request.setRequestHeader('Content-Type', 'application/octet-stream')
    request.send(file)
  })
}
