import type { IncomingHttpHeaders } from 'node:http'
import { Refusal } from './refusals/refusal.ts'

interface Asked {
  method: string
  /** As it stands in the request, undecoded. */
  url: string
  headers: IncomingHttpHeaders
  /** Every Host header; `headers` has the first alone. */
  hosts: readonly string[]
}

const OTHER_PAGE =
  'This request came from a page that is not the workbench, and was refused. ' +
  'To open the workbench, put its address into the address bar of a browser.'

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
    throw new Refusal(421, 'foreign Host', `This workbench answers at http://${authority} only.`)
  }
  if (!url.startsWith('/')) {
    throw new Refusal(400, 'no path', 'A request to the workbench begins with a path.')
  }
  if (method !== 'GET' && method !== 'POST') {
    throw new Refusal(405, 'method', 'The workbench takes GET and POST only.')
  }
  const { origin } = headers
  if (origin === undefined ? method === 'POST' : origin !== `http://${authority}`) {
    throw new Refusal(403, origin === undefined ? 'no Origin' : 'foreign Origin', OTHER_PAGE)
  }
  // Another port of this machine is another origin, and yet the same site: cookies alone don't keep it out.
  const site = headers['sec-fetch-site']
  if (site !== undefined && site !== 'same-origin' && site !== 'none') {
    throw new Refusal(403, 'from another site', OTHER_PAGE)
  }
}
