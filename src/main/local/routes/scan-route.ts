import type { IncomingMessage } from 'node:http'
import type { FastifyInstance } from 'fastify'
import { SCAN_ADDRESS } from '../../../contract/message-bridge.ts'
import type { Workbench } from '../../services/workbench/workbench.ts'
import { Refusal } from '../refusals/refusal.ts'

/** Calls off a body that stops coming for `stall` milliseconds. */
function watch(body: IncomingMessage, stall: number): void {
  const { socket } = body
  const giveUp = (): void => {
    socket.destroy()
  }
  socket.setTimeout(stall, giveUp)
  body.once('close', () => {
    socket.setTimeout(0)
    socket.off('timeout', giveUp)
  })
}

/** `POST /scan?name=plan.tif`: the bytes of a scan, handed on as they come; answers with its id. */
export async function scanRoute(
  server: FastifyInstance,
  workbench: Pick<Workbench, 'receiveScan'>,
  stall: number,
): Promise<void> {
  server.addContentTypeParser('application/octet-stream', (_request, body, done) => done(null, body))
  server.post<{ Querystring: { name?: unknown } }>(`/${SCAN_ADDRESS}`, async ({ query, raw }) => {
    const { name } = query
    if (typeof name !== 'string' || name === '') {
      throw new Refusal(400, 'scan without a name', 'A scan comes with the name of its file.')
    }
    watch(raw, stall)
    // Left off early, the stream would take the connection with it, and the sentence would not arrive.
    const bytes: AsyncIterable<Uint8Array> = raw.iterator({ destroyOnReturn: false })
    try {
      return { ok: true, id: await workbench.receiveScan(name, bytes) }
    } catch (error) {
      if (!raw.complete && raw.destroyed) {
        throw new Refusal(
          400,
          'scan broken off',
          'The scan broke off on its way, and nothing of it was kept.',
        )
      }
      raw.resume()
      throw error
    }
  })
}
