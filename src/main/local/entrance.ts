import type { FastifyReply, FastifyRequest } from 'fastify'
import type { Keys } from './keys.ts'
import { Refusal } from './refusals/refusal.ts'

const NOT_IN =
  'This workbench belongs to whoever opened it. Open it with "scantling open", and use the address that it gives.'
const USED =
  'This address has been used already: it lets one browser in, once. ' +
  'Go on in the window that it opened, or end that workbench and open it again with "scantling open".'

/** The key in an address `/?key=…`; undefined when the address is another. */
export function keyIn(url: string): string | undefined {
  const [path, query = ''] = url.split('?', 2)
  if (path !== '/') return undefined
  return new URLSearchParams(query).get('key') ?? undefined
}

/**
 * Lets a request in by the cookie, or by a key that has not been used, which is then exchanged for the cookie.
 * @returns true when the request was answered here
 * @throws Refusal
 */
export function enter(request: FastifyRequest, reply: FastifyReply, keys: Keys): boolean {
  const known = keys.isKnown(request.headers.cookie)
  const key = request.method === 'GET' ? keyIn(request.raw.url ?? '') : undefined
  if (key === undefined) {
    if (!known) throw new Refusal(401, 'no cookie', NOT_IN)
    return false
  }
  if (!known) {
    const cookie = keys.redeem(key)
    if (cookie === undefined) throw new Refusal(403, 'key used or wrong', USED)
    reply.header('set-cookie', cookie)
  }
  // The address without the key is what stays in the window and its history.
  reply.redirect('/', 303)
  return true
}
