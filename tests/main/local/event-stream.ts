import { type ClientRequest, request } from 'node:http'
import type { HostEvent } from '../../../src/contract/host-event.ts'
import type { PageWindow } from './window-of.ts'

export interface Listening {
  events: HostEvent[]
  /** Everything that came, heartbeats too. */
  text(): string
  /** Goes away, as a window that is closed does. */
  leave(): void
  /** Resolves when the host ended it. */
  ended: Promise<void>
}

/** Listens to the events of the host; resolves when the stream has begun. */
export function listening({ port, headers }: Pick<PageWindow, 'port' | 'headers'>): Promise<Listening> {
  return new Promise((resolve, reject) => {
    const sent: ClientRequest = request({
      host: '127.0.0.1',
      port,
      path: '/events',
      headers,
      setHost: false,
      agent: false,
    })
    sent.on('error', reject)
    sent.on('response', (response) => {
      const events: HostEvent[] = []
      let text = ''
      response.setEncoding('utf8').on('data', (data: string) => {
        text += data
        for (const line of data.split('\n')) {
          if (line.startsWith('data: ')) events.push(JSON.parse(line.slice(6)) as HostEvent)
        }
      })
      response.on('error', () => undefined)
      const ended = new Promise<void>((end) => response.on('close', end))
      resolve({ events, text: () => text, leave: () => sent.destroy(), ended })
    })
    sent.end()
  })
}
