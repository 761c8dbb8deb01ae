import type { AskArguments, AskName, Reply } from '../../contract/asks.ts'
import { DESKTOP_ORIGIN, type MessageBridge } from '../../contract/message-bridge.ts'
import { GONE } from './gone.ts'
import type { Host } from './host.ts'
import { sendInPieces } from './send-in-pieces.ts'

declare global {
  interface Window {
    /** Messages to the desktop host; there in its own window only. */
    readonly scantling?: MessageBridge
  }
}

/** The desktop host: messages over the bridge, pictures and scans at its own addresses. */
export function desktopHost(bridge: MessageBridge): Host {
  return {
    async ask<N extends AskName>(name: N, args: AskArguments<N>): Promise<Reply<N>> {
      try {
        return await bridge.ask(name, args)
      } catch {
        return { ok: false, sentence: GONE }
      }
    },
    listen: (heard) => bridge.listen(heard),
    pictureUrl: (address) => `${DESKTOP_ORIGIN}/${address}`,
    sendScan: (file, progressed, signal) => sendInPieces(file, progressed, signal),
  }
}
