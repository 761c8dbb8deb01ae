import type { FastifyReply, FastifyRequest } from 'fastify'
import { reason } from '../services/words/services-words.ts'
import type { Keys } from './keys.ts'
import { Refusal } from './refusals/refusal.ts'

/** The key in an address `/?key=…`; undefined when the address is another. */
function keyIn(url: string): string | undefined {
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
    if (!known) throw new Refusal(401, 'no cookie', reason('local.not-let-in'))
    return false
  }
  if (!known) {
    const cookie = keys.redeem(key)
    if (cookie === undefined) throw new Refusal(403, 'key used or wrong', reason('local.key-used'))
    reply.header('set-cookie', cookie)
  }
  // The address without the key is what stays in the window and its history.
  reply.redirect('/', 303)
  return true
}
