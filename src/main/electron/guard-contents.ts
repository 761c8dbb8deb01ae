import type { WebContents } from 'electron'
import type { Log } from './log.ts'
import { isOwnPage } from './own-address.ts'

/** Keeps a page where it is: it can't be led to another address, open a window or take a foreign page in. */
export function guardContents(contents: WebContents, log: Log): void {
  const stay = (event: { preventDefault(): void; url: string }): void => {
    if (isOwnPage(event.url)) return
    event.preventDefault()
    log('refused to go', event.url)
  }
  contents.on('will-navigate', stay)
  contents.on('will-frame-navigate', stay)
  contents.on('will-redirect', stay)
  contents.on('will-attach-webview', (event, _preferences, params) => {
    event.preventDefault()
    log('refused to take in a page', params['src'] ?? '')
  })
  contents.setWindowOpenHandler(({ url }) => {
    log('refused to open a window', url)
    return { action: 'deny' }
  })
}
