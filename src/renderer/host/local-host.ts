import type { HostEvent } from '../../contract/host-event.ts'
import type { Reply } from '../../contract/reply.ts'
import { MESSAGE_BYTES, type RequestArguments, type RequestName } from '../../contract/requests.ts'
import type { Host } from './host.ts'
import { gone, notUnderstood, tooLarge } from './own-refusals.ts'
import { readAnswer } from './read-answer.ts'
import { hearing } from './read-event.ts'
import { sendScan } from './send-scan.ts'

/** `EventSource.CLOSED`: HTML Living Standard, 9.2.2. */
const ENDED = 2

/** Milliseconds until a stream that ended for good is begun anew. */
const AGAIN_AFTER = 1000

/** How long the first request waits for the stream of events, so that nothing is missed between the two. */
const STREAM_WITHIN = 2000

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

  async function post<N extends RequestName>(name: N, args: RequestArguments<N>): Promise<Reply<N>> {
    const body = JSON.stringify(args)
    if (new Blob([body]).size > MESSAGE_BYTES) return tooLarge
    try {
      const response = await fetch(`/ask/${name}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body,
      })
      const reply: unknown = await response.json()
      const answer = readAnswer(name, reply)
      if (answer !== notUnderstood) found(true)
      return answer
    } catch {
      found(false)
      return gone
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
        // A browser tries again by itself, but for some ends; those are tried again here.
        if (source.readyState === ENDED) setTimeout(() => stream === source && begin(), AGAIN_AFTER)
      }
      setTimeout(resolve, STREAM_WITHIN)
    })
    source.onmessage = ({ data }) => hear(JSON.parse(String(data)))
  }

  const ask: Host['ask'] = async (name, args) => {
    await streaming
    return post(name, args)
  }
  const hear = hearing(ask, (event) => {
    for (const listener of listeners) listener(event)
  })

  return {
    ask,
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
