import { contextBridge, type IpcRendererEvent, ipcRenderer } from 'electron'
import { DESKTOP_CHANNELS, type MessageBridge } from '../../../contract/message-bridge.ts'

const bridge: MessageBridge = {
  ask: (name, args) => ipcRenderer.invoke(DESKTOP_CHANNELS.ask, name, args),
  listen(heard) {
    // The page gets the payload alone: the event that carries it would hand it ipcRenderer.
    const pass = (_event: IpcRendererEvent, event: unknown): void => heard(event)
    ipcRenderer.on(DESKTOP_CHANNELS.event, pass)
    return () => {
      ipcRenderer.off(DESKTOP_CHANNELS.event, pass)
    }
  },
}

contextBridge.exposeInMainWorld('scantling', bridge)
