import { connect } from 'node:net'
import { networkInterfaces } from 'node:os'
import { setTimeout as wait } from 'node:timers/promises'
import { afterEach, expect, test, vi } from 'vitest'
import type { HostEvent } from '../../../src/contract/host-event.ts'
import { type LocalHost, type LocalHostOptions, serve } from '../../../src/main/local/serve.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { reason } from '../../../src/main/services/words/services-words.ts'
import { listening } from './event-stream.ts'
import { pageFolder } from './page-folder.ts'
import { rawRequest } from './raw-request.ts'
import { windowOf } from './window-of.ts'

let host: LocalHost | undefined
afterEach(async () => {
  await host?.close().catch(() => undefined)
  host = undefined
})

type ServedWorkbench = LocalHostOptions['workbench']

interface Bench extends ServedWorkbench {
  tell(event: HostEvent): void
  received: Buffer[]
  closed: number
}

/** Stands in for the workbench: what this host is asked to carry, and nothing more. */
function bench(changes: Partial<ServedWorkbench> = {}): Bench {
  const heard = new Set<(event: HostEvent) => void>()
  const made: Bench = {
    received: [],
    closed: 0,
    ask: async () => ({ ok: true, answer: null }),
    listen: (listener) => {
      heard.add(listener)
      return () => heard.delete(listener)
    },
    greet: async () => undefined,
    picture: async (address) =>
      ['picture/S1/v1/overview', 'page/U1/3'].includes(address)
        ? { bytes: Buffer.from('a picture'), type: 'image/jpeg' }
        : null,
    receiveScan: async (_name, bytes) => {
      for await (const chunk of bytes) made.received.push(Buffer.from(chunk))
      return 'U1'
    },
    close: async () => {
      made.closed++
    },
    tell: (event) => {
      for (const listener of heard) listener(event)
    },
    ...changes,
  }
  return made
}

async function served(workbench: Bench, options: Partial<LocalHostOptions> = {}): Promise<LocalHost> {
  host = await serve({ workbench, page: await pageFolder(), log: () => undefined, ...options })
  return host
}

const EVENT: HostEvent = { kind: 'command', command: 'zoom-in' }
const LINGER = 600

test('a key lets one browser in, once, and the address that stays in the window has no key', async () => {
  const host = await served(bench())
  const address = new URL(host.newAddress())
  const enter = (headers: Record<string, string> = {}) =>
    rawRequest(Number(address.port), {
      path: `/${address.search}`,
      headers: { host: address.host, ...headers },
    })
  const entered = await enter()
  expect(entered.status).toBe(303)
  expect(entered.headers['location']).toBe('/')
  const [cookie = ''] = [entered.headers['set-cookie']].flat()
  expect(cookie).toMatch(
    new RegExp(`^scantling-${address.port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict$`),
  )
  expect(cookie).not.toContain(address.searchParams.get('key'))

  const again = await enter()
  expect(again.status).toBe(403)
  expect(again.headers['set-cookie']).toBeUndefined()
  expect(again.body).toContain('has been used already')
  const reloaded = await enter({ cookie: cookie.split(';')[0] ?? '' })
  expect([reloaded.status, reloaded.headers['location']]).toEqual([303, '/'])
})

test('the page, its files and the pictures come with the policy, each kept as long as it may be', async () => {
  const window = await windowOf(await served(bench()))
  const page = await window.get('/')
  expect([page.status, page.headers['content-type']]).toEqual([200, 'text/html; charset=utf-8'])
  expect(page.body).toContain('Workbench')
  const policy = String(page.headers['content-security-policy'])
  for (const rule of [
    "default-src 'none'",
    "script-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ]) {
    expect(policy.split('; ')).toContain(rule)
  }
  expect(page.headers).toMatchObject({
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'no-store',
  })
  expect(page.headers['access-control-allow-origin']).toBeUndefined()
  const script = await window.get('/assets/index.js')
  expect([script.status, script.headers['content-type']]).toEqual([200, 'text/javascript; charset=utf-8'])
  const picture = await window.get('/picture/S1/v1/overview')
  expect([picture.status, picture.headers['content-type'], picture.body]).toEqual([
    200,
    'image/jpeg',
    'a picture',
  ])
  expect(picture.headers['cache-control']).toBe('private, max-age=31536000, immutable')
  const page3 = await window.get('/page/U1/3')
  expect([page3.status, page3.headers['content-type'], page3.body]).toEqual([200, 'image/jpeg', 'a picture'])
  expect((await window.get('/page/U1/4')).status).toBe(404)
  const answer = await window.ask('look', {})
  expect([answer.status, JSON.parse(answer.body)]).toEqual([200, { ok: true, answer: null }])
  expect(answer.headers['cache-control']).toBe('no-store')
})

test('a picture that the window wants no more is dropped by the workbench too, and not logged as refused', async () => {
  const lines: string[] = []
  let [asked, dropped] = [0, 0]
  const workbench = bench({
    picture: (_address, wantedNoMore) =>
      new Promise((resolve) => {
        asked++
        wantedNoMore?.addEventListener('abort', () => {
          dropped++
          resolve(null)
        })
      }),
  })
  const window = await windowOf(await served(workbench, { log: (line) => lines.push(line) }))
  const address = `${window.origin}/picture/S1/v1/0/1/2`
  const going = new AbortController()
  const get = fetch(address, { headers: window.headers, signal: going.signal })
  await vi.waitFor(() => expect(asked).toBe(1))
  expect(dropped).toBe(0)
  going.abort()
  await expect(get).rejects.toThrow()
  await vi.waitFor(() => expect(dropped).toBe(1))
  await wait(50)
  expect(lines).toEqual([])
})

test('a picture that came is not told to be dropped before it was sent', async () => {
  const states: boolean[] = []
  const workbench = bench({
    picture: async (_address, dropped) => {
      states.push(dropped?.aborted ?? true)
      return { bytes: Buffer.from('a picture'), type: 'image/jpeg' }
    },
  })
  const window = await windowOf(await served(workbench))
  for (let i = 0; i < 3; i++) expect((await window.get('/picture/S1/v1/overview')).body).toBe('a picture')
  expect(states).toEqual([false, false, false])
})

test('every window hears what the workbench tells, and signs of life between', async () => {
  const workbench = bench()
  const window = await windowOf(await served(workbench, { heartbeat: 20 }))
  const [one, two] = [await listening(window), await listening(window)]
  workbench.tell(EVENT)
  await vi.waitFor(() => expect([one.events, two.events]).toEqual([[EVENT], [EVENT]]))
  await vi.waitFor(() => expect(one.text()).toContain('\n:\n\n'))
})

test('a window that comes, or comes back after a break, is told alone how things stand', async () => {
  const greeted: HostEvent[] = [
    { kind: 'pictures', progress: { sheet: 'S1', state: 'ready', done: 1, sentence: 'All are made.' } },
  ]
  const workbench = bench({
    greet: async (heard) => {
      for (const event of greeted) heard(event)
    },
  })
  const window = await windowOf(await served(workbench))
  const one = await listening(window)
  await vi.waitFor(() => expect(one.events).toEqual(greeted))
  const two = await listening(window)
  await vi.waitFor(() => expect(two.events).toEqual(greeted))
  workbench.tell(EVENT)
  await vi.waitFor(() => expect(one.events).toEqual([...greeted, EVENT]))
})

test('a scan is handed on byte for byte, piece by piece while it comes', async () => {
  let first = (): void => undefined
  const began = new Promise<void>((resolve) => {
    first = resolve
  })
  const received: Buffer[] = []
  const window = await windowOf(
    await served(
      bench({
        receiveScan: async (name, bytes) => {
          expect(name).toBe('plan & detail.tif')
          for await (const chunk of bytes) {
            received.push(Buffer.from(chunk))
            first()
          }
          return 'U7'
        },
      }),
    ),
  )
  const { request } = await import('node:http')
  const answer = new Promise<string>((resolve) => {
    const sent = request({
      host: '127.0.0.1',
      port: window.port,
      method: 'POST',
      path: `/scan?name=${encodeURIComponent('plan & detail.tif')}`,
      headers: { ...window.headers, origin: window.origin, 'content-type': 'application/octet-stream' },
      setHost: false,
    })
    sent.on('response', (response) => response.setEncoding('utf8').on('data', resolve))
    sent.write(Buffer.alloc(1000, 1))
    void began.then(() => sent.end(Buffer.alloc(500, 2)))
  })
  expect(JSON.parse(await answer)).toEqual({ ok: true, id: 'U7' })
  expect(Buffer.concat(received)).toEqual(Buffer.concat([Buffer.alloc(1000, 1), Buffer.alloc(500, 2)]))
})

test('a scan that the workbench refuses half way is answered with its sentence', async () => {
  const window = await windowOf(
    await served(
      bench({
        receiveScan: async (_name, bytes) => {
          for await (const _ of bytes) throw new ServiceError(reason('upload.empty', { called: 'plan.tif' }))
          return 'never'
        },
      }),
    ),
  )
  const answer = await window.send({
    method: 'POST',
    path: '/scan?name=plan.tif',
    headers: { 'content-type': 'application/octet-stream' },
    body: Buffer.alloc(8_000_000),
  })
  expect([answer.status, JSON.parse(answer.body)]).toEqual([
    422,
    {
      ok: false,
      reason: { code: 'upload.empty', parts: { called: 'plan.tif' } },
      sentence: 'The scan "plan.tif" is empty: scan or copy it again.',
    },
  ])
})

test('it ends when its last window is closed, the job saved first', async () => {
  const workbench = bench()
  const host = await served(workbench, { linger: LINGER })
  const window = await windowOf(host)
  const [one, two] = [await listening(window), await listening(window)]
  expect(host.hasWindow()).toBe(true)
  one.leave()
  await wait(2 * LINGER)
  expect(workbench.closed).toBe(0)
  two.leave()
  await host.ended
  expect(workbench.closed).toBe(1)
  await expect(window.get('/')).rejects.toThrow('ECONNREFUSED')
})

test('it outlives a reload, and waits for a window that has not come yet', async () => {
  const workbench = bench()
  const host = await served(workbench, { linger: LINGER })
  await wait(2 * LINGER)
  const window = await windowOf(host)
  const before = await listening(window)
  before.leave()
  await wait(LINGER / 3)
  await listening(window)
  await wait(2 * LINGER)
  expect(workbench.closed).toBe(0)
  expect((await window.get('/')).status).toBe(200)
})

test('it waits longer for a window whose page was led elsewhere, and ends when that was closed after all', async () => {
  const workbench = bench()
  const host = await served(workbench, { linger: LINGER, away: 6 * LINGER })
  const window = await windowOf(host)
  // The page may say so before its stream ends, or after.
  for (const early of [true, false]) {
    const stream = await listening(window)
    if (early) expect((await window.send({ method: 'POST', path: '/left' })).status).toBe(204)
    stream.leave()
    if (!early) await window.send({ method: 'POST', path: '/left' })
    await wait(2 * LINGER)
    expect(workbench.closed).toBe(0)
  }
  const back = await listening(window)
  back.leave()
  const since = performance.now()
  await host.ended
  expect(performance.now() - since).toBeLessThan(5 * LINGER)
})

test('closing ends the streams at once, and is done once', async () => {
  const workbench = bench()
  const host = await served(workbench, { linger: LINGER })
  const stream = await listening(await windowOf(host))
  await Promise.all([host.close(), host.close(), host.ended, stream.ended])
  expect(workbench.closed).toBe(1)
})

test('a job that could not be saved at the end is not passed over', async () => {
  const problem = new ServiceError(reason('workbench.closed'))
  const host = await served(bench({ close: () => Promise.reject(problem) }), { linger: 1 })
  const stream = await listening(await windowOf(host))
  stream.leave()
  await expect(host.ended).rejects.toThrow(problem)
})

test('a fault inside is told without its inside, and the next request is answered', async () => {
  const lines: string[] = []
  let faults = 1
  const workbench = bench({
    picture: async () => {
      if (faults-- > 0) throw new TypeError('undefined is not a function at /home/rivet/secret.ts')
      return { bytes: Buffer.from('x'), type: 'image/png' }
    },
  })
  const window = await windowOf(await served(workbench, { log: (line) => lines.push(line) }))
  const failed = await window.get('/picture/S1/v1/ground')
  expect(failed.status).toBe(500)
  expect(failed.body).not.toMatch(/TypeError|undefined is|secret/)
  expect(lines).toEqual([expect.stringContaining('undefined is not a function')])
  expect((await window.get('/picture/S1/v1/ground')).status).toBe(200)
})

test('it listens on this machine’s own loopback and nowhere else', async () => {
  const { port } = await windowOf(await served(bench()))
  const reached = (address: string) =>
    new Promise<boolean>((resolve) => {
      const socket = connect({ host: address, port, timeout: 2000 })
      const answered = (yes: boolean) => {
        socket.destroy()
        resolve(yes)
      }
      socket.on('connect', () => answered(true))
      socket.on('error', () => answered(false))
      socket.on('timeout', () => answered(false))
    })
  expect(await reached('127.0.0.1')).toBe(true)
  const others = Object.values(networkInterfaces()).flatMap((addresses) =>
    (addresses ?? []).filter(({ address, scopeid }) => address !== '127.0.0.1' && !scopeid),
  )
  // ::1 is there on nearly every machine, another address on most.
  for (const { address } of others) expect([address, await reached(address)]).toEqual([address, false])
})
