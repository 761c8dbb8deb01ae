import { randomBytes } from 'node:crypto'
import { afterEach, expect, test, vi } from 'vitest'
import { SCAN_PIECE_BYTES } from '../../../src/contract/scan-upload.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { reason } from '../../../src/main/services/words/services-words.ts'
import { desktopHost } from '../../../src/renderer/host/desktop-host.ts'
import { type Started, started } from './fixtures/started.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

afterEach(() => vi.unstubAllGlobals())

const bridge = { ask: async () => null, listen: () => () => undefined }
const host = desktopHost(bridge)

/** Has the page's fetch answered by the desktop host, as its session does. */
async function connected(): Promise<Started & { methods: string[] }> {
  const all = await started()
  const methods: string[] = []
  vi.stubGlobal('fetch', (address: string, init: RequestInit) => {
    init.signal?.throwIfAborted()
    methods.push(init.method ?? 'GET')
    return all.session.call('protocol scantling', new Request(address, init))
  })
  return { ...all, methods }
}

const scan = (bytes: Uint8Array<ArrayBuffer>, name = 'plan.tif'): File =>
  new File([bytes], name) as unknown as File

test.each([0, 1, SCAN_PIECE_BYTES, SCAN_PIECE_BYTES + 1, 2.5 * SCAN_PIECE_BYTES])(
  'a scan of %d bytes arrives as it was sent, and its progress is shown',
  async (size) => {
    const { bench, log } = await connected()
    const bytes = new Uint8Array(randomBytes(size))
    const shares: number[] = []
    const id = await host.sendScan(scan(bytes), (share) => shares.push(share), new AbortController().signal)
    expect(id).toBe('upload-1')
    expect(Buffer.compare(bench.scans.get('plan.tif') ?? Buffer.of(0), bytes)).toBe(0)
    expect(shares).toHaveLength(Math.max(1, Math.ceil(size / SCAN_PIECE_BYTES)))
    expect(shares.at(-1)).toBe(1)
    expect(log).toEqual([])
  },
)

test('two scans at once don’t mix', async () => {
  const { bench } = await connected()
  const pair = [1, 2].map((fill) => new Uint8Array(2 * SCAN_PIECE_BYTES + fill).fill(fill))
  const { signal } = new AbortController()
  await Promise.all(pair.map((bytes, i) => host.sendScan(scan(bytes, `${i}.tif`), () => undefined, signal)))
  for (const [i, bytes] of pair.entries()) {
    expect(Buffer.compare(bench.scans.get(`${i}.tif`) ?? Buffer.of(0), bytes)).toBe(0)
  }
})

test('a scan that is stopped on its way is dropped on both sides', async () => {
  const { bench, methods } = await connected()
  let ended: unknown
  bench.receiveScan = async (_name, bytes) => {
    try {
      for await (const _piece of bytes);
    } catch (error) {
      ended = error
      throw error
    }
    return 'never'
  }
  const stop = new AbortController()
  const sent = host.sendScan(scan(new Uint8Array(3 * SCAN_PIECE_BYTES)), () => stop.abort(), stop.signal)
  await expect(sent).rejects.toMatchObject({
    name: 'AbortError',
    message: '"plan.tif" was not brought in; nothing of it was kept.',
  })
  await vi.waitFor(() => expect(ended).toBeInstanceOf(ServiceError))
  expect(methods).toEqual(['POST', 'DELETE'])
})

test('a scan that the workbench refuses is not sent to its end, and the sentence reaches the person', async () => {
  const { bench, methods, log } = await connected()
  bench.receiveScan = async (_name, bytes) => {
    for await (const _piece of bytes) throw new ServiceError(reason('upload.empty', { called: 'plan.tif' }))
    return 'never'
  }
  const sent = host.sendScan(
    scan(new Uint8Array(9 * SCAN_PIECE_BYTES)),
    () => undefined,
    new AbortController().signal,
  )
  await expect(sent).rejects.toThrow('The scan "plan.tif" is empty: scan or copy it again.')
  expect(methods.filter((method) => method === 'POST').length).toBeLessThan(9)
  expect(log.length).toBeGreaterThan(0)
})

test('when the page goes, what it had begun to send is dropped', async () => {
  const { bench, window, session } = await connected()
  let dropped = false
  bench.receiveScan = async (_name, bytes) => {
    try {
      for await (const _piece of bytes);
    } finally {
      dropped = true
    }
    return 'never'
  }
  const upload = crypto.randomUUID()
  await send(session, `name=a.tif&upload=${upload}&piece=0&of=2`)
  window.webContents.emit('did-start-navigation', { isMainFrame: true, isSameDocument: false })
  await vi.waitFor(() => expect(dropped).toBe(true))
})

const send = (
  session: Started['session'],
  query: string,
  body = 'bytes',
  method = 'POST',
): Promise<Response> =>
  session.call(
    'protocol scantling',
    new Request(`scantling://bench/scan?${query}`, { method, ...(method === 'POST' ? { body } : {}) }),
  ) as Promise<Response>

const U = '6f1c2b0e-5d0a-4c9e-9d67-0d6f5f0a1b2c'

test.each([
  ['no name', `upload=${U}&piece=0&of=1`],
  ['no upload', 'name=a.tif&piece=0&of=1'],
  ['an upload that is a path', 'name=a.tif&upload=../../a&piece=0&of=1'],
  ['a piece beyond the last', `name=a.tif&upload=${U}&piece=1&of=1`],
  ['a negative piece', `name=a.tif&upload=${U}&piece=-1&of=1`],
  ['a piece without a beginning', `name=a.tif&upload=${U}&piece=1&of=2`],
  ['too many pieces', `name=a.tif&upload=${U}&piece=0&of=100000`],
  ['something more', `name=a.tif&upload=${U}&piece=0&of=1&path=/etc/passwd`],
  ['a very long name', `name=${'x'.repeat(5000)}&upload=${U}&piece=0&of=1`],
])('a piece with %s is refused with a sentence and one line', async (_what, query) => {
  const { session, bench, log } = await started()
  const response = await send(session, query)
  expect(response.status).toBe(400)
  expect(await response.json()).toMatchObject({ ok: false, sentence: expect.stringMatching(/\.$/) })
  expect(log).toHaveLength(1)
  expect([...bench.scans]).toEqual([])
  const right = await send(session, `name=b.tif&upload=${U}&piece=0&of=1`)
  expect(await right.json()).toEqual({ ok: true, id: 'upload-1' })
})

test('a piece that is larger than agreed, lost or sent twice ends the scan', async () => {
  const { session } = await started()
  const large = 'x'.repeat(SCAN_PIECE_BYTES + 1)
  expect((await send(session, `name=a.tif&upload=${U}&piece=0&of=1`, large)).status).toBe(400)
  expect((await send(session, `name=a.tif&upload=${U}&piece=0&of=3`)).status).toBe(200)
  expect((await send(session, `name=a.tif&upload=${U}&piece=2&of=3`)).status).toBe(400)
  expect((await send(session, `name=a.tif&upload=${U}&piece=1&of=3`)).status).toBe(400)
})

test('more scans at once than a person hands over are refused, and there is room again when one is given up', async () => {
  const { session } = await started()
  const ids = Array.from({ length: 9 }, () => crypto.randomUUID())
  const statuses: number[] = []
  for (const id of ids) statuses.push((await send(session, `name=a.tif&upload=${id}&piece=0&of=2`)).status)
  expect(statuses).toEqual([...Array(8).fill(200), 400])
  await send(session, `upload=${ids[0]}`, '', 'DELETE')
  expect((await send(session, `name=a.tif&upload=${ids[8]}&piece=0&of=2`)).status).toBe(200)
})

test.each(['GET', 'PUT', 'PATCH'])('a scan can’t be handed over by %s', async (method) => {
  const { session, log } = await started()
  expect((await send(session, `name=a.tif&upload=${U}&piece=0&of=1`, '', method)).status).toBe(405)
  expect(log).toHaveLength(1)
})

test('pictures are fetched from the desktop’s own address, and a host that is gone is a sentence', async () => {
  expect(host.pictureUrl('picture/S1/0a/overview')).toBe('scantling://bench/picture/S1/0a/overview')
  const gone = desktopHost({ ...bridge, ask: () => Promise.reject(new Error('object has been destroyed')) })
  expect(await gone.ask('look', {})).toMatchObject({
    ok: false,
    sentence: expect.stringContaining('no longer answers'),
  })
})
