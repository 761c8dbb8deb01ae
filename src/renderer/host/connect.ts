import { useBench } from '../bench/bench-store.ts'
import { desktopHost } from './desktop-host.ts'
import type { Host } from './host.ts'
import { localHost } from './local-host.ts'

/** The host of this window: the desktop one where its bridge is there, else the one at this page's own address. */
export function connect(): Host {
  const bridge = window.scantling
  return bridge === undefined
    ? localHost((connected) => useBench.setState({ connected }))
    : desktopHost(bridge)
}
