import type { FastifyReply, FastifyRequest } from 'fastify'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { reason } from '../../services/words/services-words.ts'
import { refusedFor } from '../../services/workbench/refuse.ts'
import { logPath, logText } from './log-parts.ts'
import { Refusal } from './refusal.ts'

/** What fastify turns away by itself, by its error codes and statuses. */
const BY_CODE: Readonly<Record<string, Refusal>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: new Refusal(413, 'message too large', reason('local.too-large')),
  FST_ERR_CTP_INVALID_MEDIA_TYPE: new Refusal(415, 'content type', reason('local.content-type')),
  FST_ERR_BAD_URL: new Refusal(400, 'malformed address', reason('local.unreadable-address')),
  FST_ERR_MAX_PARAM_LENGTH: new Refusal(404, 'address too long', reason('local.address-too-long')),
}

const UNREADABLE = new Refusal(400, 'malformed message', reason('local.unreadable'))

function asRefusal(error: unknown): Refusal {
  if (error instanceof Refusal) return error
  if (error instanceof ScantlingError) return new Refusal(422, error.message, error.reason)
  const { code, statusCode } = error as { code?: unknown; statusCode?: unknown }
  const known = typeof code === 'string' ? BY_CODE[code] : undefined
  if (known !== undefined) return known
  if (typeof statusCode === 'number' && statusCode >= 400 && statusCode < 500) return UNREADABLE
  const what = error instanceof Error ? error.message : String(error)
  return new Refusal(500, `a fault of its own: ${what}`, reason('local.fault'))
}

const page = (sentence: string): string =>
  `<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Scantling</title><p>${sentence}</p></html>\n`

/** Answers a request that is refused or that failed, with a sentence, and logs it in one line. */
export function turnAway(
  error: unknown,
  request: FastifyRequest,
  reply: FastifyReply,
  log: (line: string) => void,
): FastifyReply {
  const { status, why, reason: because } = asRefusal(error)
  const refused = refusedFor(because)
  const { sentence } = refused
  const { method = '', url = '' } = request.raw
  log(`refused ${logText(method)} ${logPath(url)}: ${logText(why)}`)
  reply.code(status)
  if (status === 405) reply.header('allow', 'GET, POST')
  if (method === 'POST') return reply.send(refused)
  const path = url.replace(/\?.*$/s, '')
  return path === '/' && error instanceof Refusal
    ? reply.type('text/html; charset=utf-8').send(page(sentence))
    : reply.type('text/plain; charset=utf-8').send(`${sentence}\n`)
}
