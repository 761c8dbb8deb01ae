import { type BrowserWindow, dialog } from 'electron'

/** Tells a person what went wrong, in a dialog on the window. */
export async function tellInDialog(window: BrowserWindow, sentence: string): Promise<void> {
  if (window.isDestroyed()) return
  await dialog.showMessageBox(window, {
    type: 'error',
    title: 'Scantling',
    message: sentence,
    buttons: ['OK'],
  })
}
