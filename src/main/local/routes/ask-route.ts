import type { FastifyInstance } from 'fastify'
import { MESSAGE_BYTES } from '../../../contract/requests.ts'
import { reason } from '../../services/words/services-words.ts'
import type { Workbench } from '../../services/workbench/workbench.ts'
import { Refusal } from '../refusals/refusal.ts'
import { jsonDepth } from './json-depth.ts'

/** No message is nested nearly so deep; a document of a million brackets would exhaust whatever walks through it. */
const DEEPEST = 64

/** What a message that no window sends is refused for, and the status of that; a refused edit is an everyday answer. */
const NO_WINDOW: Readonly<Record<string, number>> = { 'request.unknown': 404, 'request.malformed': 400 }

/** `POST /ask/<name>`: the arguments as JSON; the answer is a `Reply`. */
export async function askRoute(server: FastifyInstance, workbench: Pick<Workbench, 'ask'>): Promise<void> {
  const parse = server.getDefaultJsonParser('error', 'error')
  server.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    const text = String(body)
    if (jsonDepth(text) > DEEPEST) {
      done(new Refusal(400, 'message nested too deep', reason('local.unreadable')))
    } else parse(request, text, done)
  })
  server.post<{ Params: { name: string } }>(
    '/ask/:name',
    { bodyLimit: MESSAGE_BYTES },
    async (request, reply) => {
      const { name } = request.params
      const answer = await workbench.ask(name, request.body)
      if (!answer.ok) reply.code(NO_WINDOW[answer.reason.code] ?? 200)
      return answer
    },
  )
}
