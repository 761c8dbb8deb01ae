import { app, type BrowserWindow, dialog } from 'electron'
import { inWords } from './in-words.ts'

/**
 * Saves and closes the job before its window goes and the program ends. When that fails, a person is told first.
 * @param close saves and closes what is open
 */
export function closeCleanly(window: BrowserWindow, close: () => Promise<void>): void {
  let closing = false
  window.on('close', (event) => {
    event.preventDefault()
    if (closing) return
    closing = true
    void close()
      .catch((error: unknown) => tellFailure(window, error))
      .finally(() => {
        window.destroy()
        app.quit()
      })
  })
}

async function tellFailure(window: BrowserWindow, error: unknown): Promise<void> {
  await dialog.showMessageBox(window, {
    type: 'error',
    title: 'Scantling',
    message: `The job could not be closed in order. ${inWords(error)}`,
    detail:
      'Every edit that was shown as saved is in the history, and comes back when the job is opened again.',
    buttons: ['Close'],
  })
}
