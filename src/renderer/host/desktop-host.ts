import { DESKTOP_ORIGIN, type MessageBridge } from '../../contract/message-bridge.ts'
import type { Host } from './host.ts'
import { gone } from './own-refusals.ts'
import { readAnswer } from './read-answer.ts'
import { hearing } from './read-event.ts'
import { sendInPieces } from './send-in-pieces.ts'

declare global {
  interface Window {
    /** Messages to the desktop host; there in its own window only. */
    readonly scantling?: MessageBridge
  }
}

/** The desktop host: messages over the bridge, pictures and scans at its own addresses. */
export function desktopHost(bridge: MessageBridge): Host {
  const ask: Host['ask'] = async (name, args) => {
    let reply: unknown
    try {
      reply = await bridge.ask(name, args)
    } catch {
      return gone
    }
    return readAnswer(name, reply)
  }
  return {
    ask,
    listen: (heard) => bridge.listen(hearing(ask, heard)),
    pictureUrl: (address) => `${DESKTOP_ORIGIN}/${address}`,
    sendScan: (file, progressed, signal) => sendInPieces(file, progressed, signal),
  }
}
