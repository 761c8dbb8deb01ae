import { request } from 'node:http'
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import type { SheetPictures } from '../../../src/contract/pictures.ts'
import { MESSAGE_BYTES } from '../../../src/contract/requests.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { type Answer, type Raw, rawRequest, rawText } from './raw-request.ts'
import { type ServedJob, servedJob } from './served-job.ts'
import { type PageWindow, windowOf } from './window-of.ts'

const STALL = 600

let job: ServedJob
let window: PageWindow
let before: Record<string, string>
/** What the pictures of the sheet are called. */
let version: string
beforeAll(async () => {
  job = await servedJob({ stall: STALL })
  window = await windowOf(job.host)
  // Nothing is to change in the folder by itself from here on.
  await vi.waitFor(
    async () => {
      const { answer } = JSON.parse((await window.ask('show-sheet', { sheet: 'S1' })).body) as {
        answer: SheetPictures
      }
      expect(['overview', 'tiles']).not.toContain(answer.progress.state)
      version = answer.version
    },
    { timeout: 60_000, interval: 100 },
  )
  before = await jobFiles()
})
beforeEach(() => {
  job.lines.length = 0
})
afterAll(() => job.host.close())

const jobFiles = (): Promise<Record<string, string>> => folderSnapshot(job.folder)

/** Cases for a test, each under a title of bearable length. */
const titled = (cases: readonly string[]): [string, string][] =>
  cases.map((text) => [JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}…` : text), text])

async function stillServes(): Promise<void> {
  job.lines.length = 0
  const answer = await window.ask('look', {})
  expect(answer.status).toBe(200)
  expect(JSON.parse(answer.body)).toMatchObject({ ok: true, answer: { opened: { writable: true } } })
  expect((await window.get('/')).status).toBe(200)
  expect(job.lines).toEqual([])
  expect(await jobFiles()).toEqual(before)
}

/** One request that is refused: with a status, a sentence, one line in the log, and nothing given away. */
async function refused(answer: Answer, status: number): Promise<void> {
  expect(answer.status).toBe(status)
  expect(answer.headers['set-cookie']).toBeUndefined()
  expect(answer.headers['access-control-allow-origin']).toBeUndefined()
  expect(answer.headers['content-security-policy']).toContain("default-src 'none'")
  expect(answer.headers['cache-control']).toBe('no-store')
  expect(answer.body).toMatch(/[A-Z].*\./)
  expect(answer.body).not.toMatch(/OUTSIDE|\bat .*:\d+:\d+|node_modules/)
  expect(job.lines).toHaveLength(1)
  expect(job.lines[0]).toMatch(/^refused [^\p{Cc}]{1,500}$/u)
  await stillServes()
}

const withoutCookie = ({ cookie: _, ...headers }: Record<string, string>): Record<string, string> => headers
const json = { 'content-type': 'application/json' }

describe('whoever was not let in is refused', () => {
  test.each<[string, string]>([
    ['no key and no cookie', '/'],
    ['an empty key', '/?key='],
    ['a wrong key', `/?key=${'A'.repeat(43)}`],
    ['a key of another length', '/?key=A'],
    ['a very long key', `/?key=${'A'.repeat(8000)}`],
    ['the key at another address', '/index.html?key=KEY'],
  ])('%s', async (_, path) => {
    const key = new URL(job.host.newAddress()).searchParams.get('key') ?? ''
    const headers = withoutCookie(window.headers)
    const answer = await rawRequest(window.port, { path: path.replace('KEY', key), headers })
    await refused(answer, path.startsWith('/?key') ? 403 : 401)
    expect(String(job.lines)).not.toContain(key)
  })

  test('a key that was used', async () => {
    const { search } = new URL(job.host.newAddress())
    const enter = () =>
      rawRequest(window.port, { path: `/${search}`, headers: withoutCookie(window.headers) })
    expect((await enter()).status).toBe(303)
    await refused(await enter(), 403)
  })

  test.each<[string, (cookie: string) => string]>([
    ['a wrong cookie', (cookie) => cookie.replace(/=.*/, `=${'A'.repeat(43)}`)],
    ['a part of the cookie', (cookie) => cookie.slice(0, -1)],
    ['the cookie under another name', (cookie) => `x${cookie}`],
    ['an empty cookie', (cookie) => cookie.replace(/=.*/, '=')],
  ])('%s', async (_, forge) => {
    const headers = { ...window.headers, cookie: forge(window.headers['cookie'] ?? '') }
    await refused(await rawRequest(window.port, { path: '/', headers }), 401)
  })

  test.each<[string, Raw]>([
    ['asking', { method: 'POST', path: '/ask/look', headers: json, body: '{}' }],
    [
      'handing a scan over',
      {
        method: 'POST',
        path: '/scan?name=a.png',
        headers: { 'content-type': 'application/octet-stream' },
        body: 'x',
      },
    ],
    ['listening', { path: '/events' }],
    ['looking at a picture', { path: '/picture/S1/0/overview' }],
    ['an address where nothing is', { path: '/nothing' }],
  ])('%s without a cookie', async (_, raw) => {
    const headers = {
      ...withoutCookie(window.headers),
      ...(raw.method ? { origin: window.origin } : {}),
      ...raw.headers,
    }
    await refused(await rawRequest(window.port, { ...raw, headers }), 401)
  })
})

describe('a foreign page is refused, although the browser sends the cookie with what it asks', () => {
  test.each<[string, string | undefined]>([
    ['a name that points here', 'bench.example:PORT'],
    ['localhost', 'localhost:PORT'],
    ['the address without its port', '127.0.0.1'],
    ['another port', '127.0.0.1:1'],
    ['the address with a dot', '127.0.0.1.:PORT'],
    ['an empty one', ''],
    ['none', undefined],
  ])('Host: %s', async (_, host) => {
    const { host: __, ...others } = window.headers
    const headers =
      host === undefined ? others : { ...others, host: host.replace('PORT', String(window.port)) }
    await refused(await rawRequest(window.port, { path: '/', headers }), 421)
  })

  test.each([
    'http://bench.example',
    'null',
    'http://127.0.0.1:1',
    'https://127.0.0.1:PORT',
    'http://localhost:PORT',
    '',
  ])('Origin: %s', async (origin) => {
    const forged = { origin: origin.replace('PORT', String(window.port)) }
    const posted = await window.send({
      method: 'POST',
      path: '/ask/close-job',
      headers: { ...json, ...forged },
      body: '{}',
    })
    await refused(posted, 403)
    job.lines.length = 0
    await refused(await window.send({ path: '/', headers: forged }), 403)
  })

  test('a message without an Origin', async () => {
    const raw = { method: 'POST', path: '/ask/close-job', body: '{}' }
    await refused(await rawRequest(window.port, { ...raw, headers: { ...window.headers, ...json } }), 403)
  })

  test.each(['cross-site', 'same-site', 'anything'])('Sec-Fetch-Site: %s', async (site) => {
    const forged = { 'sec-fetch-site': site }
    await refused(await window.send({ path: '/picture/S1/0/overview', headers: forged }), 403)
    job.lines.length = 0
    const posted = { method: 'POST', path: '/ask/close-job', body: '{}' }
    await refused(await window.send({ ...posted, headers: { ...json, ...forged } }), 403)
  })

  test('an address whose key it has got hold of does not let a foreign page in, and is not used up', async () => {
    const { search } = new URL(job.host.newAddress())
    const enter = (site: string) =>
      rawRequest(window.port, {
        path: `/${search}`,
        headers: { ...withoutCookie(window.headers), 'sec-fetch-site': site },
      })
    await refused(await enter('cross-site'), 403)
    expect((await enter('none')).status).toBe(303)
  })
})

describe('the methods that a page has no use for are refused', () => {
  test.each(['OPTIONS', 'PUT', 'TRACE', 'DELETE', 'PATCH', 'HEAD', 'PROPFIND'])('%s', async (method) => {
    const answer = await rawRequest(window.port, {
      method,
      path: '/ask/look',
      headers: { ...window.headers, origin: window.origin },
    })
    expect(answer.headers['access-control-allow-methods']).toBeUndefined()
    expect(answer.headers['allow']).toBe('GET, POST')
    if (method === 'HEAD') answer.body = 'No body comes with HEAD.'
    await refused(answer, 405)
  })
})

const UP = [
  '../secret.txt',
  '../../secret.txt',
  'assets/../../secret.txt',
  '..%2fsecret.txt',
  '%2e%2e/secret.txt',
  '%2e%2e%2fsecret.txt',
  '%252e%252e%252fsecret.txt',
  '..\\secret.txt',
  '..%5csecret.txt',
  'assets/..%00/index.js',
  'index.html%00.png',
  '/secret.txt',
  '//etc/passwd',
  '%2fetc%2fpasswd',
  'C:%5cWindows%5cwin.ini',
  'file:///etc/passwd',
  'assets',
  'assets/',
  'Index.html',
  '.',
  'a'.repeat(5000),
]

describe('no path that comes over the wire leads out of its place', () => {
  test.each(titled(UP))('the page’s files: %s', async (_, path) => {
    await refused(await window.get(`/${path}`), 404)
  })

  test.each(['%', '%zz', '%c3%28', 'assets/%ff%fe'])(
    'an address that can’t be decoded: /%s',
    async (path) => {
      const answer = await window.get(`/${path}`)
      await refused(answer, answer.status === 404 ? 404 : 400)
    },
  )

  test.each(titled(UP))('the parts of the address of a picture: %s', async (_, path) => {
    for (const address of [
      `/picture/${path}/${version}/overview`,
      `/picture/${encodeURIComponent(path)}/${version}/overview`,
      `/picture/S1/${path}/overview`,
      `/picture/S1/${encodeURIComponent(path)}/overview`,
      `/picture/S1/${version}/${path}`,
      `/picture/S1/${version}/0/0/${path}`,
    ]) {
      job.lines.length = 0
      await refused(await window.get(address), 404)
    }
  })

  test.each(titled(UP))('the name of an ask: %s', async (_, path) => {
    const answer = await window.send({ method: 'POST', path: `/ask/${path}`, headers: json, body: '{}' })
    expect(answer.status).toBeGreaterThanOrEqual(404)
    await refused(answer, answer.status)
  })

  const decoded = [...UP.filter((path) => path !== '.'), '../secret.txt\0', '/etc/passwd', '__proto__', '']
  test.each(titled(decoded))('the arguments of asks: %s', async (_, path) => {
    const asks: [string, object][] = [
      ['open-recent', { recent: path }],
      ['look-in-folder', { folder: path }],
      ['glance', { job: path }],
      ['add-sheets', { upload: path, by: 'A. Rivet' }],
      ['new-job', { title: 'x', unit: 'in', by: 'A. Rivet', uploads: [{ upload: path }] }],
      ['show-sheet', { sheet: path }],
    ]
    for (const [name, args] of asks) {
      job.lines.length = 0
      const answer = await window.ask(name, args)
      const reply = JSON.parse(answer.body) as { ok: boolean; sentence: string }
      expect([name, reply.ok]).toEqual([name, false])
      expect(reply.sentence).not.toMatch(/ENOENT|EACCES|\bat .*:\d+:\d+/)
      expect(job.lines).toHaveLength(1)
    }
    await stillServes()
  })

  test.each(
    titled([
      '../../secret.txt',
      '..\\..\\secret.txt',
      '/etc/passwd',
      'a\0b.png',
      'C:\\x.png',
      '..',
      `${'n'.repeat(4000)}.png`,
    ]),
  )('the name of a scan is a name and nothing more: %s', async (_, name) => {
    const outside = await outsideFiles()
    const answer = await window.send({
      method: 'POST',
      path: `/scan?name=${encodeURIComponent(name)}`,
      headers: { 'content-type': 'application/octet-stream' },
      body: 'not a picture',
    })
    // Taken for what it is: a file of its own below the folder for it, whatever it is called.
    const reply = JSON.parse(answer.body) as { ok: boolean; id?: string }
    expect(await outsideFiles()).toEqual(outside)
    if (reply.ok) {
      // And never made a sheet of, for it is no picture.
      const added = await window.ask('add-sheets', { upload: reply.id, by: 'A. Rivet' })
      expect(JSON.parse(added.body)).toMatchObject({ ok: false })
    }
    expect(await waiting()).toEqual([])
    await stillServes()
  })
})

/** Everything that is not the folder for scans on their way. */
async function outsideFiles(): Promise<string[]> {
  const files = [...Object.keys(await folderSnapshot(job.home))]
  return files.filter((file) => !file.startsWith('temporary'))
}

/** The scans that lie on their way. */
async function waiting(): Promise<string[]> {
  const { readdir } = await import('node:fs/promises')
  const entries = await readdir(job.temporary, { recursive: true, withFileTypes: true }).catch(() => [])
  return entries.flatMap((entry) => (entry.isFile() ? [`${entry.parentPath}/${entry.name}`] : []))
}

describe('a message out of measure or shape is refused', () => {
  const posted = (body: Raw['body'], headers: Record<string, string> = json) =>
    window.send({ method: 'POST', path: '/ask/edit', headers, ...(body === undefined ? {} : { body }) })
  const nested = (depth: number) => `{"edit":${'{"a":'.repeat(depth)}1${'}'.repeat(depth)},"by":"A. Rivet"}`

  test('too large, by its declared length', async () => {
    const body = Buffer.alloc(MESSAGE_BYTES + 1, ' ')
    await refused(await posted(body, { ...json, 'content-length': String(body.length) }), 413)
  })

  test('too large, of no declared length', async () => {
    const pieces = Array.from({ length: 9 }, () => Buffer.alloc(MESSAGE_BYTES / 8, ' '))
    await refused(await posted(pieces), 413)
  })

  test.each<[string, string]>([
    ['no JSON', '{"edit":'],
    ['empty', ''],
    ['nested a thousand deep', nested(1000)],
    ['nested a million deep', '['.repeat(1_000_000)],
    ['brackets that only close', ']'.repeat(1000)],
    ['a prototype', '{"__proto__":{"ok":true}}'],
    ['a prototype further in', '{"edit":{"do":"note","__proto__":{"a":1}},"by":"A. Rivet"}'],
    ['a constructor', '{"edit":{"constructor":{"prototype":{"a":1}}},"by":"A. Rivet"}'],
  ])('%s', async (_, body) => {
    await refused(await posted(body), 400)
  })

  test.each<[string, string]>([
    ['an array', '[]'],
    ['a number', '7'],
    ['no arguments', '{}'],
    ['an argument too many', '{"edit":{"do":"note"},"by":"A. Rivet","path":"/etc/passwd"}'],
    ['an argument of another type', '{"edit":"note","by":"A. Rivet"}'],
    ['a name out of measure', JSON.stringify({ edit: { do: 'note' }, by: 'n'.repeat(100_000) })],
  ])('%s', async (_, body) => {
    const answer = await posted(body)
    expect(JSON.parse(answer.body)).toMatchObject({ ok: false, sentence: expect.any(String) })
    await refused(answer, 400)
  })

  test('an edit that the job does not take is an answer, not an error', async () => {
    const answer = await window.ask('edit', { edit: { do: 'no such thing' }, by: 'A. Rivet' })
    expect(answer.status).toBe(200)
    expect(JSON.parse(answer.body)).toMatchObject({ ok: false })
    expect(job.lines).toHaveLength(1)
    await stillServes()
  })

  test.each(['constructor', '__proto__', 'toString', 'nothing'])('an ask called %s', async (name) => {
    const answer = await window.ask(name, {})
    expect(JSON.parse(answer.body)).toMatchObject({ ok: false, sentence: expect.any(String) })
    await refused(answer, 404)
  })

  test.each<[string, Record<string, string>]>([
    ['text', { 'content-type': 'text/plain' }],
    ['a form', { 'content-type': 'application/x-www-form-urlencoded' }],
    ['a form of parts', { 'content-type': 'multipart/form-data; boundary=x' }],
    ['a scan', { 'content-type': 'application/octet-stream' }],
    ['nothing said', {}],
  ])('of another kind: %s', async (_, headers) => {
    await refused(await posted('{}', headers), 415)
  })

  test('a scan sent as a message', async () => {
    const answer = await window.send({ method: 'POST', path: '/scan?name=a.png', headers: json, body: '{}' })
    await refused(answer, 415)
  })

  test.each(['/scan', '/scan?name=', '/scan?name=a.png&name=b.png'])(
    'a scan without one name: %s',
    async (path) => {
      const headers = { 'content-type': 'application/octet-stream' }
      await refused(await window.send({ method: 'POST', path, headers, body: 'x' }), 400)
    },
  )

  test('an empty scan', async () => {
    const headers = { 'content-type': 'application/octet-stream' }
    await refused(await window.send({ method: 'POST', path: '/scan?name=a.png', headers, body: '' }), 422)
  })

  test('headers out of measure', async () => {
    const answer = await rawText(
      window.port,
      `GET / HTTP/1.1\r\nHost: 127.0.0.1:${window.port}\r\nX-Long: ${'x'.repeat(100_000)}\r\n\r\n`,
    )
    expect(answer).toMatch(/^HTTP\/1\.1 431 /)
    expect(job.lines).toHaveLength(1)
    await stillServes()
  })

  test.each<[string, string]>([
    ['a NUL in the address', 'GET /\0 HTTP/1.1\r\nHost: HOST\r\n\r\n'],
    ['no HTTP at all', 'HELO bench\r\n\r\n'],
    [
      'two lengths',
      'POST /ask/look HTTP/1.1\r\nHost: HOST\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}',
    ],
    [
      'a chunk that is none, half way',
      'POST /ask/look HTTP/1.1\r\nHost: HOST\r\nOrigin: http://HOST\r\nCookie: COOKIE\r\nContent-Type: application/json\r\n' +
        'Transfer-Encoding: chunked\r\n\r\n1\r\n{\r\nzz\r\n',
    ],
    [
      'a length and chunks',
      'POST /ask/look HTTP/1.1\r\nHost: HOST\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n{}',
    ],
  ])('%s', async (_, text) => {
    const answer = await rawText(
      window.port,
      text.replaceAll('HOST', `127.0.0.1:${window.port}`).replace('COOKIE', window.headers['cookie'] ?? ''),
    )
    expect(answer).toMatch(/^HTTP\/1\.1 400 /)
    expect(job.lines).toHaveLength(1)
    await stillServes()
  })

  test('an address with a host of its own', async () => {
    const { cookie } = window.headers
    const answer = await rawText(
      window.port,
      `GET http://bench.example/ HTTP/1.1\r\nHost: 127.0.0.1:${window.port}\r\nCookie: ${cookie}\r\n\r\n`,
    )
    expect(answer).toMatch(/^HTTP\/1\.1 400 /)
    expect(job.lines).toHaveLength(1)
    await stillServes()
  })

  test.each(['bench.example', 'HOST'])('a second Host: %s', async (second) => {
    const host = `127.0.0.1:${window.port}`
    const answer = await rawText(
      window.port,
      `GET / HTTP/1.1\r\nHost: ${host}\r\nHost: ${second.replace('HOST', host)}\r\n` +
        `Cookie: ${window.headers['cookie']}\r\n\r\n`,
    )
    expect(answer).toMatch(/^HTTP\/1\.1 421 /)
    expect(job.lines).toHaveLength(1)
    await stillServes()
  })

  test('a line break in the address writes no second line into the log', async () => {
    await refused(await window.get('/a%0d%0arefused nothing'.replace(' ', '%20')), 404)
  })
})

describe('a scan that does not arrive leaves nothing', () => {
  const begun = (headers: Record<string, string | number>) => {
    const sent = request({
      host: '127.0.0.1',
      port: window.port,
      method: 'POST',
      path: '/scan?name=plan.tif',
      headers: {
        ...window.headers,
        origin: window.origin,
        'content-type': 'application/octet-stream',
        ...headers,
      },
      setHost: false,
      agent: false,
    })
    sent.on('error', () => undefined)
    sent.write(Buffer.alloc(100_000))
    return sent
  }

  test('broken off', async () => {
    const sent = begun({})
    await vi.waitFor(async () => expect(await waiting()).toHaveLength(1))
    sent.destroy()
    await vi.waitFor(async () => expect(await waiting()).toEqual([]))
    await vi.waitFor(() => expect(job.lines).toHaveLength(1))
    await stillServes()
  })

  test('fewer bytes than it declared', async () => {
    const sent = begun({ 'content-length': 200_000 })
    await vi.waitFor(async () => expect(await waiting()).toHaveLength(1))
    sent.destroy()
    await vi.waitFor(async () => expect(await waiting()).toEqual([]))
    await vi.waitFor(() => expect(job.lines).toHaveLength(1))
    await stillServes()
  })

  test('so slow that it stands still', async () => {
    const sent = begun({})
    await vi.waitFor(async () => expect(await waiting()).toHaveLength(1))
    await new Promise((resolve) => sent.on('close', resolve))
    await vi.waitFor(async () => expect(await waiting()).toEqual([]))
    await vi.waitFor(() => expect(job.lines).toHaveLength(1))
    await stillServes()
  })

  test('slow, but coming, it is taken', async () => {
    const answer = new Promise<string>((resolve) => {
      const sent = begun({})
      sent.on('response', (response) => response.setEncoding('utf8').on('data', resolve))
      let pieces = 6
      const timer = setInterval(() => {
        sent.write('x')
        if (--pieces > 0) return
        clearInterval(timer)
        sent.end()
      }, STALL / 3)
    })
    expect(JSON.parse(await answer)).toMatchObject({ ok: true })
    expect(job.lines).toEqual([])
  })
})
