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
