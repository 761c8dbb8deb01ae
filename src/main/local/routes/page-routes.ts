import type { FastifyInstance, FastifyReply } from 'fastify'
import { KEPT_FOR_GOOD } from '../../services/page/headers.ts'
import type { PageFiles } from '../../services/page/page-files.ts'
import { reason } from '../../services/words/services-words.ts'
import type { Workbench } from '../../services/workbench/workbench.ts'
import { Refusal } from '../refusals/refusal.ts'

const sent = (reply: FastifyReply, { bytes, type }: { bytes: Uint8Array; type: string }): FastifyReply =>
  reply.type(type).send(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength))

/** The path of an address as it was asked for: never decoded here, so that nothing can hide in it. */
const pathOf = (url: string | undefined): string => (url ?? '').replace(/\?.*$/s, '')

/** Aborts when a window drops a request before it is answered. */
function droppedOf({ raw }: FastifyReply): AbortSignal {
  const control = new AbortController()
  raw.once('close', () => control.abort())
  return control.signal
}

/** The page's own files, by exact address, and the pictures of sheets, of pages of scans and of jobs. */
export async function pageRoutes(
  server: FastifyInstance,
  workbench: Pick<Workbench, 'picture'>,
  files: PageFiles,
): Promise<void> {
  for (const pictures of ['/picture/*', '/page/*', '/front/*']) {
    server.get(pictures, async ({ raw }, reply) => {
      const dropped = droppedOf(reply)
      const picture = await workbench.picture(pathOf(raw.url).slice(1), dropped)
      // Nobody hears any more, and nothing was refused that the log should tell of.
      if (dropped.aborted) return reply.hijack()
      if (picture === null) throw new Refusal(404, 'no such picture', reason('local.no-picture'))
      return sent(reply.header('cache-control', KEPT_FOR_GOOD), picture)
    })
  }
  server.get('*', async ({ raw }, reply) => {
    const file = files.get(pathOf(raw.url))
    if (file === undefined) throw new Refusal(404, 'no such page', reason('local.nothing-there'))
    return sent(reply, file)
  })
}
