import type { AskArguments, AskName, Reply } from '../../contract/asks.ts'
import { MESSAGE_BYTES } from '../../contract/asks.ts'
import type { HostEvent } from '../../contract/host-event.ts'
import { GONE } from './gone.ts'
import type { Host } from './host.ts'
import { sendScan } from './send-scan.ts'

const TOO_LARGE =
  'This is more than the workbench takes at once, so nothing was done: do it in smaller parts.'

/** How long the first ask waits for the stream of events, so that nothing is missed between the two. */
const STREAM_WITHIN = 2000

const isReply = (value: unknown): value is Reply =>
  typeof value === 'object' &&
  value !== null &&
  'ok' in value &&
  (value.ok === true || ('sentence' in value && typeof value.sentence === 'string'))

/**
 * The host at this page's own address.
 * @param connected told whether it answers, at each change
 */
export function localHost(connected: (answers: boolean) => void): Host {
  const listeners = new Set<(event: HostEvent) => void>()
  let stream: EventSource | undefined
  let streaming: Promise<void> | undefined
  let answers = true

  const found = (now: boolean): void => {
    if (now !== answers) connected(now)
    answers = now
  }
  const hear = (event: HostEvent): void => {
    for (const listener of listeners) listener(event)
  }

  async function post<N extends AskName>(name: N, args: AskArguments<N>): Promise<Reply<N>> {
    const body = JSON.stringify(args)
    if (new Blob([body]).size > MESSAGE_BYTES) return { ok: false, sentence: TOO_LARGE }
    try {
      const response = await fetch(`/ask/${name}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body,
      })
      const reply: unknown = await response.json()
      if (!isReply(reply)) return { ok: false, sentence: GONE }
      found(true)
      return reply as Reply<N>
    } catch {
      found(false)
      return { ok: false, sentence: GONE }
    }
  }

  /** Each stream begins with how things stand, so that nothing that was told in a break is missed. */
  function begin(): void {
    const source = new EventSource('/events')
    stream = source
    streaming = new Promise((resolve) => {
      source.onopen = () => {
        resolve()
        found(true)
      }
      source.onerror = () => {
        resolve()
        found(false)
      }
      setTimeout(resolve, STREAM_WITHIN)
    })
    source.onmessage = ({ data }) => hear(JSON.parse(String(data)) as HostEvent)
  }

  return {
    async ask(name, args) {
      await streaming
      return post(name, args)
    },
    listen(heard) {
      listeners.add(heard)
      if (stream === undefined) begin()
      return () => {
        listeners.delete(heard)
        if (listeners.size > 0) return
        stream?.close()
        stream = undefined
        streaming = undefined
      }
    },
    pictureUrl: (address) => `/${address}`,
    sendScan,
  }
}
