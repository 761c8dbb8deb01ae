import { desktopHost } from './desktop-host.ts'
import type { Host } from './host.ts'
import { localHost } from './local-host.ts'

/**
 * The host of this window: the desktop one where its bridge is there, else the one at this page's own address.
 * @param connected told whether it answers, at each change
 */
export function connect(connected: (answers: boolean) => void): Host {
  const bridge = window.scantling
  return bridge === undefined ? localHost(connected) : desktopHost(bridge)
}
