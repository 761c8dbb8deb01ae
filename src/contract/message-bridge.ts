import type { AskArguments, AskName, Reply } from './asks.ts'
import type { HostEvent } from './host-event.ts'

/** What the desktop host puts into its window as `window.scantling`: messages only. */
export interface MessageBridge {
  ask<N extends AskName>(name: N, args: AskArguments<N>): Promise<Reply<N>>
  /** Calls back at every event; the function that comes back ends that. */
  listen(heard: (event: HostEvent) => void): () => void
}

/** Where a scan is sent: `scan?name=plan.tif`, by POST, the bytes as they are. */
export const SCAN_ADDRESS = 'scan'

/** The scheme and host of the desktop window's own addresses. */
export const DESKTOP_ORIGIN = 'scantling://bench'
