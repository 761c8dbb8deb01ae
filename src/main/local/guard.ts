import type { IncomingHttpHeaders } from 'node:http'
import { reason } from '../services/words/services-words.ts'
import { Refusal } from './refusals/refusal.ts'

interface Asked {
  method: string
  /** As it stands in the request, undecoded. */
  url: string
  headers: IncomingHttpHeaders
  /** Every Host header; `headers` has the first alone. */
  hosts: readonly string[]
}

/**
 * Turns away whatever could not come from the workbench's own page, before anything else looks at it.
 * @param authority the host's own, e.g. `127.0.0.1:40123`
 * @throws Refusal
 * Source: Fetch Metadata Request Headers, W3C; RFC 9110 §7.4 (421), RFC 9112 §3.2 (one Host), RFC 6454
 * (Origin).
 */
export function guard({ method, url, headers, hosts }: Asked, authority: string): void {
  // A name that points here (DNS rebinding) makes a foreign page same-origin; it can't change the Host header.
  if (hosts.length !== 1 || hosts[0] !== authority) {
    throw new Refusal(421, 'foreign Host', reason('local.another-address', { authority }))
  }
  if (!url.startsWith('/')) {
    throw new Refusal(400, 'no path', reason('local.no-path'))
  }
  if (method !== 'GET' && method !== 'POST') {
    throw new Refusal(405, 'method', reason('local.method'))
  }
  const { origin } = headers
  if (origin === undefined ? method === 'POST' : origin !== `http://${authority}`) {
    throw new Refusal(
      403,
      origin === undefined ? 'no Origin' : 'foreign Origin',
      reason('local.another-page'),
    )
  }
  // Another port of this machine is another origin, and yet the same site: cookies alone don't keep it out.
  const site = headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none') {
    throw new Refusal(403, 'from another site', reason('local.another-page'))
  }
}
