import type { ServerResponse } from 'node:http'
import type { HostEvent } from '../../contract/host-event.ts'

/** A window that stopped reading is cut off: it connects again, and is told how things stand. */
const MOST_WAITING = 64 * 1024 * 1024

export interface StreamTimes {
  /** Milliseconds from the end of the last stream until its window counts as closed; a reload takes less. */
  linger: number
  /** The same where its page was led elsewhere and not closed: time enough for a person to come back. */
  away: number
  /** Milliseconds between signs of life. */
  heartbeat: number
}

/** The event streams of the windows that are open. Server-sent events: HTML Living Standard §9.2. */
export class EventStreams {
  readonly #times: StreamTimes
  readonly #allGone: () => void
  readonly #streams = new Set<ServerResponse>()
  readonly #pulse: NodeJS.Timeout
  #farewell: NodeJS.Timeout | undefined
  /** Whether a page was led elsewhere, and no window came back yet. */
  #isAway = false
  #closed = false

  /** @param allGone called when there was a window, and none has been there for a while */
  constructor(times: StreamTimes, allGone: () => void) {
    this.#times = times
    this.#allGone = allGone
    this.#pulse = setInterval(() => this.#write(':\n\n'), times.heartbeat)
    this.#pulse.unref()
  }

  get size(): number {
    return this.#streams.size
  }

  /** Begins a stream on a response of which nothing is sent yet. */
  add(response: ServerResponse, headers: Readonly<Record<string, string>>): void {
    clearTimeout(this.#farewell)
    this.#isAway = false
    response.writeHead(200, { ...headers, 'content-type': 'text/event-stream; charset=utf-8' })
    response.write('retry: 1000\n\n')
    this.#streams.add(response)
    response.on('error', () => response.destroy())
    response.on('close', () => {
      this.#streams.delete(response)
      if (this.#streams.size === 0) this.#waitForOne()
    })
  }

  /** A page says that it is being led elsewhere: by Back, by another address, or to be loaded again. */
  leadAway(): void {
    this.#isAway = true
    if (this.#streams.size === 0 && this.#farewell !== undefined) this.#waitForOne()
  }

  #waitForOne(): void {
    clearTimeout(this.#farewell)
    if (this.#closed) return
    const { away, linger } = this.#times
    this.#farewell = setTimeout(this.#allGone, this.#isAway ? away : linger)
  }

  send(event: HostEvent): void {
    this.#write(asText(event))
  }

  /** Sends an event on the stream of one window alone. */
  sendTo(response: ServerResponse, event: HostEvent): void {
    if (this.#streams.has(response)) response.write(asText(event))
  }

  close(): void {
    this.#closed = true
    clearInterval(this.#pulse)
    for (const stream of this.#streams) stream.end()
    clearTimeout(this.#farewell)
  }

  #write(text: string): void {
    for (const stream of this.#streams) {
      if (stream.writableLength > MOST_WAITING) stream.destroy()
      else stream.write(text)
    }
  }
}

const asText = (event: HostEvent): string => `data: ${JSON.stringify(event)}\n\n`
