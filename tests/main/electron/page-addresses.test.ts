import { expect, test, vi } from 'vitest'
import { PAGE_HEADERS } from '../../../src/main/services/page/headers.ts'
import type { Session } from './fixtures/electron-stand-in.ts'
import { started } from './fixtures/started.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

const fetchFrom = (session: Session, address: string, init?: RequestInit): Promise<Response> =>
  session.call('protocol scantling', new Request(address, init)) as Promise<Response>

test.each([
  ['scantling://bench/', 'text/html; charset=utf-8'],
  ['scantling://bench', 'text/html; charset=utf-8'],
  ['scantling://bench/index.html', 'text/html; charset=utf-8'],
  ['scantling://bench/assets/page.js', 'text/javascript; charset=utf-8'],
])('the page’s own file is served with its policy: %s', async (address, type) => {
  const { session, log } = await started()
  const response = await fetchFrom(session, address)
  expect([response.status, response.headers.get('content-type')]).toEqual([200, type])
  for (const [name, value] of Object.entries(PAGE_HEADERS)) expect(response.headers.get(name)).toBe(value)
  expect(response.headers.get('cache-control')).toBe('no-store')
  expect(response.headers.get('access-control-allow-origin')).toBeNull()
  expect(log).toEqual([])
})

test('the policy lets nothing in but the host’s own files', () => {
  const policy = PAGE_HEADERS['Content-Security-Policy']?.split('; ')
  expect(policy).toEqual([
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ])
})

test('a picture comes from the workbench, and may be kept as its address names the scan', async () => {
  const { session, bench } = await started()
  const response = await fetchFrom(session, 'scantling://bench/picture/S1/0a/overview')
  expect(response.status).toBe(200)
  expect(response.headers.get('content-type')).toBe('image/jpeg')
  expect(response.headers.get('cache-control')).toContain('immutable')
  expect([...new Uint8Array(await response.arrayBuffer())]).toEqual([255, 216])
  expect(bench.pictures).toEqual(['picture/S1/0a/overview'])
})

test('that a picture is wanted no more is passed on to the workbench', async () => {
  const { session, bench } = await started()
  const going = new AbortController()
  await fetchFrom(session, 'scantling://bench/picture/S1/0a/overview', { signal: going.signal })
  expect(bench.dropped?.aborted).toBe(false)
  going.abort()
  expect(bench.dropped?.aborted).toBe(true)
})

const OUTSIDE = [
  '../package.json',
  '..%2fpackage.json',
  '%2e%2e/package.json',
  '%2e%2e%2f%2e%2e%2fpackage.json',
  '%252e%252e%252fpackage.json',
  '..%5cpackage.json',
  '..\\package.json',
  'assets/../../package.json',
  'assets/..%2f..%2fpackage.json',
  'assets/%00../../package.json',
  'assets/page.js%00',
  'assets/page%2ejs',
  '/assets/page.js',
  '//etc/passwd',
  '/etc/passwd',
  'C:/Windows/win.ini',
  'assets',
  'assets/',
  'Index.html',
  'picture/../../package.json',
  'picture/S1/%2e%2e/overview',
  'x'.repeat(100_000),
]

test.each(OUTSIDE)('no path reaches the disk: %.60s', async (path) => {
  const { session, log } = await started()
  const response = await fetchFrom(session, `scantling://bench/${path}`)
  expect([response.status, response.headers.get('content-security-policy')]).toEqual([
    404,
    PAGE_HEADERS['Content-Security-Policy'],
  ])
  expect(await response.text()).toBe('There is nothing at this address.')
  expect(log).toHaveLength(1)
  expect((await fetchFrom(session, 'scantling://bench/')).status).toBe(200)
})

test.each(['scantling://other/', 'scantling://bench:81/', 'scantling://', 'scantling:///index.html'])(
  'another host of the scheme is not answered: %s',
  async (address) => {
    const { session, log } = await started()
    expect((await fetchFrom(session, address)).status).toBe(403)
    expect(log).toHaveLength(1)
  },
)

test.each(['http://example.com', 'null', 'scantling://other'])(
  'a request from %s is refused',
  async (origin) => {
    const { session, log } = await started()
    for (const address of ['scantling://bench/', 'scantling://bench/picture/S1/0a/overview']) {
      expect((await fetchFrom(session, address, { headers: { origin } })).status).toBe(403)
    }
    expect(log).toHaveLength(2)
  },
)

test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])(
  'nothing can be sent to the page by %s',
  async (method) => {
    const { session, log } = await started()
    expect((await fetchFrom(session, 'scantling://bench/index.html', { method })).status).toBe(405)
    expect(log).toHaveLength(1)
  },
)

test('a fault while answering is said without its inside, and logged', async () => {
  const { session, bench, log } = await started()
  bench.picture = async () => {
    throw new Error('/home/rivet/secret')
  }
  const response = await fetchFrom(session, 'scantling://bench/picture/S1/0a/overview')
  expect(response.status).toBe(500)
  expect(await response.text()).not.toContain('secret')
  expect(log).toHaveLength(1)
})
