import type { FastifyReply, FastifyRequest } from 'fastify'
import { asSentence } from '../../../core/words/as-sentence.ts'
import { ScantlingError } from '../../../core/words/scantling-error.ts'
import { logPath, logText } from './log-parts.ts'
import { Refusal } from './refusal.ts'

/** What fastify turns away by itself, by its error codes and statuses. */
const BY_CODE: Readonly<Record<string, Refusal>> = {
  FST_ERR_CTP_BODY_TOO_LARGE: new Refusal(
    413,
    'message too large',
    'This message is larger than the workbench takes, so nothing was done.',
  ),
  FST_ERR_CTP_INVALID_MEDIA_TYPE: new Refusal(
    415,
    'content type',
    'The workbench takes messages as application/json and scans as application/octet-stream.',
  ),
  FST_ERR_BAD_URL: new Refusal(400, 'malformed address', "This address can't be read."),
  FST_ERR_MAX_PARAM_LENGTH: new Refusal(404, 'address too long', 'There is nothing at this address.'),
}

const UNREADABLE = new Refusal(400, 'malformed message', "This message can't be read, so nothing was done.")

function asRefusal(error: unknown): Refusal {
  if (error instanceof Refusal) return error
  if (error instanceof ScantlingError) return new Refusal(422, error.message, asSentence(error.message))
  const { code, statusCode } = error as { code?: unknown; statusCode?: unknown }
  const known = typeof code === 'string' ? BY_CODE[code] : undefined
  if (known !== undefined) return known
  if (typeof statusCode === 'number' && statusCode >= 400 && statusCode < 500) return UNREADABLE
  const what = error instanceof Error ? error.message : String(error)
  return new Refusal(
    500,
    `a fault of its own: ${what}`,
    'The workbench failed at this by a fault of its own. What was acknowledged before is kept; try again.',
  )
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
  const { status, why, message } = asRefusal(error)
  const { method = '', url = '' } = request.raw
  log(`refused ${logText(method)} ${logPath(url)}: ${logText(why)}`)
  reply.code(status)
  if (status === 405) reply.header('allow', 'GET, POST')
  if (method === 'POST') return reply.send({ ok: false, sentence: message })
  const path = url.replace(/\?.*$/s, '')
  return path === '/' && error instanceof Refusal
    ? reply.type('text/html; charset=utf-8').send(page(message))
    : reply.type('text/plain; charset=utf-8').send(`${message}\n`)
}
