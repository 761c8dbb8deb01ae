import type { AddressInfo } from 'node:net'
import Fastify from 'fastify'
import { NEVER_KEPT, PAGE_HEADERS } from '../services/page/headers.ts'
import { readPageFiles } from '../services/page/page-files.ts'
import { reason } from '../services/words/services-words.ts'
import type { Workbench } from '../services/workbench/workbench.ts'
import { enter } from './entrance.ts'
import { EventStreams } from './event-streams.ts'
import { guard } from './guard.ts'
import { Keys } from './keys.ts'
import { MalformedHttp } from './refusals/malformed-http.ts'
import { Refusal } from './refusals/refusal.ts'
import { turnAway } from './refusals/turn-away.ts'
import { askRoute } from './routes/ask-route.ts'
import { pageRoutes } from './routes/page-routes.ts'
import { scanRoute } from './routes/scan-route.ts'

const LOOPBACK = '127.0.0.1'

/** Milliseconds for a request to arrive whole: the largest scan from a slow disk takes less. */
const REQUEST_WITHIN = 10 * 60 * 1000

/** Common practice, no source: as long as somebody may look something up. */
const AWAY = 60 * 60 * 1000

/** What this host carries. */
type ServedWorkbench = Pick<Workbench, 'ask' | 'listen' | 'greet' | 'picture' | 'receiveScan' | 'close'>

export interface LocalHostOptions {
  workbench: ServedWorkbench
  /** The folder where the build put the page. */
  page: string
  /** One line for each request that is refused or that failed. */
  log: (line: string) => void
  /** Milliseconds from the end of the last window until the host ends: time enough for a slow machine to load it again. */
  linger?: number
  /** The same for a window whose page was led elsewhere, as Back does. */
  away?: number
  /** Milliseconds between signs of life on the event streams. */
  heartbeat?: number
  /** Milliseconds without a byte after which a scan on its way is given up. */
  stall?: number
}

export interface LocalHost {
  /** An address, e.g. `http://127.0.0.1:40123/?key=…`, that lets one browser in, once; another at each call. */
  newAddress(): string
  /** Whether a window is there now. */
  hasWindow(): boolean
  /** Closes the job, saved, and ends. */
  close(): Promise<void>
  /** Settles when the host has ended, by itself or by `close`; fails when the job could not be saved. */
  ended: Promise<void>
}

/**
 * Serves a workbench to a page on this machine's own loopback, on a free port. Ends when its last window is gone.
 * @throws ServiceError when the page has not been built
 */
export async function serve(options: LocalHostOptions): Promise<LocalHost> {
  const { workbench, log, linger = 10_000, away = AWAY, heartbeat = 15_000, stall = 30_000 } = options
  const files = await readPageFiles(options.page)
  const malformed = new MalformedHttp(log)
  const server = Fastify({
    exposeHeadRoutes: false,
    forceCloseConnections: true,
    requestTimeout: REQUEST_WITHIN,
    // A request without a Host is refused with the others that have a wrong one.
    http: { requireHostHeader: false },
    frameworkErrors: (error, request, reply) => {
      reply.headers({ ...PAGE_HEADERS, 'cache-control': NEVER_KEPT })
      turnAway(error, request, reply, log)
    },
    clientErrorHandler: (error, socket) => malformed.refuse(error, socket),
  })
  let own: { authority: string; keys: Keys } | undefined
  const streams = new EventStreams({ linger, away, heartbeat }, () => void close().catch(() => undefined))
  const deaf = workbench.listen((event) => streams.send(event))

  server.removeAllContentTypeParsers()
  server.setErrorHandler((error, request, reply) =>
    turnAway(error, request, reply, malformed.wasRefused(request.raw.socket) ? () => undefined : log),
  )
  server.setNotFoundHandler(() => {
    throw new Refusal(404, 'no such address', reason('local.nothing-there'))
  })
  server.addHook('onRequest', async (request, reply) => {
    reply.headers({ ...PAGE_HEADERS, 'cache-control': NEVER_KEPT })
    const { method = '', url = '', headers, headersDistinct } = request.raw
    guard({ method, url, headers, hosts: headersDistinct['host'] ?? [] }, own?.authority ?? '')
    if (own !== undefined && enter(request, reply, own.keys)) return reply
    return undefined
  })
  server.get('/events', (_request, reply) => {
    reply.hijack()
    streams.add(reply.raw, { ...PAGE_HEADERS, 'cache-control': NEVER_KEPT })
    // A window that comes back after a break may have missed anything.
    void workbench
      .greet((event) => streams.sendTo(reply.raw, event))
      .catch((error: unknown) => log(`failed to greet a window: ${String(error)}`))
  })
  server.post('/left', { bodyLimit: 1 }, (_request, reply) => {
    streams.leadAway()
    return reply.code(204).send()
  })
  await server.register((scope) => askRoute(scope, workbench))
  await server.register((scope) => scanRoute(scope, workbench, stall))
  await server.register((scope) => pageRoutes(scope, workbench, files))

  await server.listen({ host: LOOPBACK, port: 0 })
  const { port } = server.server.address() as AddressInfo
  const authority = `${LOOPBACK}:${port}`
  const keys = new Keys(port)
  own = { authority, keys }

  let hasEnded = (_problem?: unknown): void => undefined
  const ended = new Promise<void>((resolve, reject) => {
    hasEnded = (problem) => (problem === undefined ? resolve() : reject(problem))
  })
  ended.catch(() => undefined)
  const end = async (): Promise<void> => {
    try {
      await workbench.close()
    } finally {
      deaf()
      streams.close()
      await server.close()
    }
  }
  let closing: Promise<void> | undefined
  function close(): Promise<void> {
    closing ??= end()
    closing.then(
      () => hasEnded(),
      (problem) => hasEnded(problem),
    )
    return closing
  }
  return {
    newAddress: () => `http://${authority}/?key=${keys.issue()}`,
    hasWindow: () => streams.size > 0,
    close,
    ended,
  }
}
