import { BrowserWindow, type Session } from 'electron'
import { PAGE_ADDRESS } from './own-address.ts'

/**
 * The window of the workbench, not shown before there is something to see.
 * @param preload the built preload
 */
export function benchWindow(session: Session, preload: string): BrowserWindow {
  const window = new BrowserWindow({
    title: 'Scantling',
    width: 1280,
    height: 800,
    minWidth: 960,
    minHeight: 600,
    show: false,
    webPreferences: {
      session,
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: process.env['SCANTLING_DEBUG'] !== undefined,
    },
  })
  window.once('ready-to-show', () => window.show())
  return window
}

/** Has the window show its page. */
export const showPage = (window: BrowserWindow): Promise<void> => window.loadURL(PAGE_ADDRESS)
