import { expect } from 'vitest'
import type { LocalHost } from '../../../src/main/local/serve.ts'
import { type Answer, type Raw, rawRequest } from './raw-request.ts'

/** A window that was let in: what its page sends has the headers a browser gives it. */
export interface PageWindow {
  port: number
  origin: string
  headers: Record<string, string>
  ask(name: string, args: unknown): Promise<Answer>
  get(path: string): Promise<Answer>
  send(raw: Raw): Promise<Answer>
}

export async function windowOf(host: Pick<LocalHost, 'newAddress'>): Promise<PageWindow> {
  const address = new URL(host.newAddress())
  const port = Number(address.port)
  const entered = await rawRequest(port, {
    path: `${address.pathname}${address.search}`,
    headers: { host: address.host, 'sec-fetch-site': 'none' },
  })
  expect(entered.status).toBe(303)
  const cookie = String(entered.headers['set-cookie']).split(';')[0] ?? ''
  const headers = { host: address.host, cookie, 'sec-fetch-site': 'same-origin' }
  const posting = { ...headers, origin: address.origin }
  return {
    port,
    origin: address.origin,
    headers,
    get: (path) => rawRequest(port, { path, headers }),
    ask: (name, args) =>
      rawRequest(port, {
        method: 'POST',
        path: `/ask/${name}`,
        headers: { ...posting, 'content-type': 'application/json' },
        body: JSON.stringify(args),
      }),
    send: (raw) =>
      rawRequest(port, {
        ...raw,
        headers: { ...(raw.method === undefined ? headers : posting), ...raw.headers },
      }),
  }
}
