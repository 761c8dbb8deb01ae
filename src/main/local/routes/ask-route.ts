import type { FastifyInstance } from 'fastify'
import { ASKS, isAskName, MESSAGE_BYTES, type Reply } from '../../../contract/asks.ts'
import type { Workbench } from '../../services/workbench/workbench.ts'
import { Refusal } from '../refusals/refusal.ts'
import { jsonDepth } from './json-depth.ts'

/** No message is nested nearly so deep; a document of a million brackets would exhaust whatever walks through it. */
const DEEPEST = 64

/** A refused edit is an everyday answer; a message that no window sends is an error. */
const isMalformed = (name: string, args: unknown, reply: Reply): boolean =>
  !reply.ok && !(isAskName(name) && ASKS[name].safeParse(args).success)

/** `POST /ask/<name>`: the arguments as JSON; the answer is a `Reply`. */
export async function askRoute(server: FastifyInstance, workbench: Pick<Workbench, 'ask'>): Promise<void> {
  const parse = server.getDefaultJsonParser('error', 'error')
  server.addContentTypeParser('application/json', { parseAs: 'string' }, (request, body, done) => {
    const text = String(body)
    if (jsonDepth(text) > DEEPEST) {
      done(new Refusal(400, 'message nested too deep', "This message can't be read, so nothing was done."))
    } else parse(request, text, done)
  })
  server.post<{ Params: { name: string } }>(
    '/ask/:name',
    { bodyLimit: MESSAGE_BYTES },
    async (request, reply) => {
      const { name } = request.params
      const answer = await workbench.ask(name, request.body)
      if (isMalformed(name, request.body, answer)) reply.code(isAskName(name) ? 400 : 404)
      return answer
    },
  )
}
