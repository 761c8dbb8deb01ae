import { type BrowserWindow, dialog } from 'electron'

/** Lets a person choose a job folder with the system's own dialog; undefined when they choose none. */
export async function chooseFolder(window: BrowserWindow): Promise<string | undefined> {
  const { canceled, filePaths } = await dialog.showOpenDialog(window, {
    title: 'Open a job folder',
    buttonLabel: 'Open',
    properties: ['openDirectory'],
  })
  return canceled ? undefined : filePaths[0]
}

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
