import { type BrowserWindow, type IpcMainInvokeEvent, ipcMain } from 'electron'
import { DESKTOP_CHANNELS } from '../../contract/message-bridge.ts'
import type { Refused, Reply } from '../../contract/reply.ts'
import { MESSAGE_BYTES } from '../../contract/requests.ts'
import { reason, type ServiceReason } from '../services/words/services-words.ts'
import { refusedFor } from '../services/workbench/refuse.ts'
import type { DesktopWorkbench } from './desktop-workbench.ts'
import type { Log } from './log.ts'
import { isOwnPage } from './own-address.ts'

/**
 * Carries what the page asks to the workbench, and what the workbench tells to the page.
 * @returns ends it
 */
export function carryMessages(window: BrowserWindow, workbench: DesktopWorkbench, log: Log): () => void {
  const refuse = (reason: ServiceReason, why: string): Refused => {
    log('refused a message', why)
    return refusedFor(reason)
  }
  ipcMain.handle(DESKTOP_CHANNELS.ask, async (event, ...message: unknown[]): Promise<Reply> => {
    if (!isFromPage(event, window)) {
      return refuse(reason('message.foreign'), 'from a foreign sender')
    }
    const [name, args] = message
    const text = asJson(args)
    if (message.length !== 2 || text === null) {
      return refuse(reason('message.not-understood'), 'not a name and JSON')
    }
    if (typeof name !== 'string' || Buffer.byteLength(name) + Buffer.byteLength(text) > MESSAGE_BYTES) {
      return refuse(reason('message.too-large', { most: MESSAGE_BYTES }), 'too large, or its name is no text')
    }
    // The workbench gets what survives JSON and nothing else, as from the other host.
    return workbench.ask(name, JSON.parse(text))
  })
  const deaf = workbench.listen((event) => {
    if (!window.isDestroyed()) window.webContents.send(DESKTOP_CHANNELS.event, event)
  })
  return () => {
    ipcMain.removeHandler(DESKTOP_CHANNELS.ask)
    deaf()
  }
}

/** Whether the page itself asks: the window's own main frame, while it shows our page. */
function isFromPage(event: IpcMainInvokeEvent, window: BrowserWindow): boolean {
  const { sender, senderFrame } = event
  return (
    !window.isDestroyed() &&
    sender === window.webContents &&
    senderFrame !== null &&
    senderFrame === window.webContents.mainFrame &&
    isOwnPage(senderFrame.url)
  )
}

function asJson(value: unknown): string | null {
  try {
    return JSON.stringify(value) ?? null
  } catch {
    return null
  }
}
