import type { IncomingMessage } from 'node:http'
import type { FastifyInstance } from 'fastify'
import { SCAN_ADDRESS, type ScanReply } from '../../../contract/scan-upload.ts'
import { reason } from '../../services/words/services-words.ts'
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
  server.post<{ Querystring: { name?: unknown } }>(
    `/${SCAN_ADDRESS}`,
    async ({ query, raw }): Promise<ScanReply> => {
      const { name } = query
      if (typeof name !== 'string' || name === '') {
        throw new Refusal(400, 'scan without a name', reason('local.scan-without-name'))
      }
      watch(raw, stall)
      // Left off early, the stream would take the connection with it, and the sentence would not arrive.
      const bytes: AsyncIterable<Uint8Array> = raw.iterator({ destroyOnReturn: false })
      try {
        return { ok: true, id: await workbench.receiveScan(name, bytes) }
      } catch (error) {
        if (!raw.complete && raw.destroyed) {
          throw new Refusal(400, 'scan broken off', reason('local.scan-broken-off'))
        }
        raw.resume()
        throw error
      }
    },
  )
}
