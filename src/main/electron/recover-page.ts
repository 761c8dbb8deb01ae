import { type BrowserWindow, dialog } from 'electron'
import { showPage } from './bench-window.ts'
import type { Log } from './log.ts'

/**
 * Puts down what a page had begun when it goes, and offers to show it again when it died.
 * @param gone called when the page is gone, for whatever reason
 */
export function recoverPage(window: BrowserWindow, gone: () => void, log: Log): void {
  const { webContents } = window
  webContents.on('did-start-navigation', ({ isMainFrame, isSameDocument }) => {
    if (isMainFrame && !isSameDocument) gone()
  })
  webContents.on('render-process-gone', (_event, { reason }) => {
    gone()
    if (reason === 'clean-exit') return
    log('the page died', reason)
    void offerAgain(window)
  })
}

async function offerAgain(window: BrowserWindow): Promise<void> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'error',
    title: 'Scantling',
    message: 'The window stopped working. The job is safe: every edit that was shown as saved is on disk.',
    buttons: ['Show it again', 'Close'],
    defaultId: 0,
    cancelId: 0,
    noLink: true,
  })
  if (window.isDestroyed()) return
  if (response === 0) await showPage(window)
  else window.close()
}
