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

/** What the desktop host's messages are carried on. */
export const DESKTOP_CHANNELS = { ask: 'ask', event: 'event' } as const

/**
 * The desktop host takes a scan in pieces, each a POST of its own, because it shows no progress of one long POST:
 * `scan?name=plan.tif&upload=<UUID>&piece=<0…>&of=<pieces>`. Each is answered by a Reply-like
 * `{ ok: true, id: string | null }` or `{ ok: false, sentence }`; the id comes with the last. DELETE of
 * `scan?upload=<UUID>` abandons it.
 */
export const SCAN_PIECE_BYTES = 4 * 1024 * 1024
