import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { HostEvent } from '../../../src/contract/host-event.ts'
import { MESSAGE_BYTES } from '../../../src/contract/requests.ts'
import { localHost } from '../../../src/renderer/host/local-host.ts'

/** Stands in for the browser's stream of events. */
class Stream {
  static all: Stream[] = []
  readonly address: string
  onopen: (() => void) | null = null
  onerror: (() => void) | null = null
  onmessage: ((message: { data: string }) => void) | null = null
  closed = false
  constructor(address: string) {
    this.address = address
    Stream.all.push(this)
  }
  close(): void {
    this.closed = true
  }
}

/** Stands in for the browser's upload. */
class Upload {
  static last: Upload
  upload: { onprogress?: (progress: { loaded: number; total: number }) => void } = {}
  onload?: () => void
  onerror?: () => void
  onabort?: () => void
  onloadend?: () => void
  responseText = ''
  opened: string[] = []
  headers: string[] = []
  body: unknown
  constructor() {
    Upload.last = this
  }
  open(...how: string[]): void {
    this.opened = how
  }
  setRequestHeader(...header: string[]): void {
    this.headers = header
  }
  send(body: unknown): void {
    this.body = body
  }
  abort(): void {
    this.onabort?.()
  }
}

const fetched = vi.fn<(address: string, request: RequestInit) => Promise<Response>>()
const STATE = {
  version: '0.1.0',
  host: 'local',
  person: 'A. Rivet',
  choosesFolders: false,
  recent: [],
  opened: null,
}
const replying =
  (reply: unknown, status = 200) =>
  async () =>
    Response.json(reply, { status })

beforeEach(() => {
  Stream.all = []
  fetched.mockReset().mockImplementation(replying({ ok: true, answer: STATE }))
  vi.stubGlobal('EventSource', Stream)
  vi.stubGlobal('XMLHttpRequest', Upload)
  vi.stubGlobal('fetch', fetched)
})
afterEach(() => vi.unstubAllGlobals())

test('an ask is posted as JSON, and its reply handed on', async () => {
  const host = localHost(() => undefined)
  expect(await host.ask('open-recent', { recent: 'r1' })).toEqual({ ok: true, answer: STATE })
  expect(fetched).toHaveBeenCalledWith(
    '/ask/open-recent',
    expect.objectContaining({ method: 'POST', body: '{"recent":"r1"}' }),
  )
  const refused = {
    ok: false,
    reason: { code: 'workbench.no-job', parts: {} },
    sentence: 'No job is open: open one first.',
  }
  fetched.mockImplementation(replying(refused, 400))
  expect(await host.ask('close-job', {})).toEqual(refused)
})

test('a host that is gone is told of in words, and once', async () => {
  const told: boolean[] = []
  const host = localHost((answers) => told.push(answers))
  fetched.mockRejectedValue(new TypeError('Failed to fetch'))
  const gone = {
    ok: false,
    reason: { code: 'host.gone', parts: {} },
    sentence: expect.stringContaining('The workbench no longer answers.'),
  }
  expect(await host.ask('look', {})).toEqual(gone)
  expect(await host.ask('look', {})).toEqual(gone)
  expect(told).toEqual([false])
  fetched.mockImplementation(replying({ ok: true, answer: STATE }))
  await host.ask('look', {})
  expect(told).toEqual([false, true])
})

test('what is no reply is not taken for one', async () => {
  const host = localHost(() => undefined)
  for (const answer of [
    async () => new Response('Gone away', { status: 502 }),
    replying([1]),
    replying({ ok: false }),
    replying({ ok: false, sentence: 'No job is open.' }),
    replying({ ok: true }),
    replying({ ok: true, answer: null }),
    replying({ ok: true, answer: { ...STATE, host: 'elsewhere' } }),
    replying({ ok: true, answer: { ...STATE, more: 1 } }),
  ]) {
    fetched.mockImplementation(answer)
    expect(await host.ask('look', {})).toMatchObject({
      ok: false,
      sentence: expect.stringMatching(/^[A-Z].*\.$/),
    })
  }
})

test('a message that the host would refuse for its size is not sent', async () => {
  const by = 'é'.repeat(MESSAGE_BYTES / 2)
  const reply = await localHost(() => undefined).ask('undo', { by })
  expect(reply).toMatchObject({ ok: false, sentence: expect.stringContaining('smaller parts') })
  expect(fetched).not.toHaveBeenCalled()
})

test('every listener hears the events, over one stream, which ends with the last of them', () => {
  const host = localHost(() => undefined)
  const [one, two]: HostEvent[][] = [[], []]
  const endOne = host.listen((event) => one?.push(event))
  const endTwo = host.listen((event) => two?.push(event))
  const event: HostEvent = { kind: 'command', command: 'zoom-in' }
  const [stream] = Stream.all
  stream?.onmessage?.({ data: JSON.stringify(event) })
  expect([Stream.all.length, stream?.address, one, two]).toEqual([1, '/events', [event], [event]])
  endOne()
  expect(stream?.closed).toBe(false)
  endTwo()
  expect(stream?.closed).toBe(true)
})

test('after what is no event, how things stand is asked for and told instead', async () => {
  const heard: HostEvent[] = []
  localHost(() => undefined).listen((event) => heard.push(event))
  const [stream] = Stream.all
  stream?.onopen?.()
  for (const data of ['{"kind":"command","command":"format-disk"}', '{"kind":"news"}', '[]']) {
    stream?.onmessage?.({ data })
    await vi.waitFor(() => expect(heard).toEqual([{ kind: 'bench', state: STATE }]))
    heard.length = 0
  }
  expect(fetched).toHaveBeenCalledTimes(3)
})

test('the first ask waits until the events can be heard', async () => {
  const host = localHost(() => undefined)
  host.listen(() => undefined)
  const asked = host.ask('look', {})
  await new Promise((resolve) => setTimeout(resolve, 20))
  expect(fetched).not.toHaveBeenCalled()
  Stream.all[0]?.onopen?.()
  await asked
  expect(fetched).toHaveBeenCalledOnce()
})

test('a break and its end are told, and nothing is asked for: the host itself says how things stand', () => {
  const told: boolean[] = []
  const host = localHost((answers) => told.push(answers))
  host.listen(() => undefined)
  const [stream] = Stream.all
  stream?.onopen?.()
  stream?.onerror?.()
  expect(told).toEqual([false])
  stream?.onopen?.()
  expect(told).toEqual([false, true])
  expect(fetched).not.toHaveBeenCalled()
})

const scan = new File(['scan'], 'plan & detail.tif')

test('a scan is sent as it is, under its name, and how far it is comes back', async () => {
  const shares: number[] = []
  const id = localHost(() => undefined).sendScan(
    scan,
    (share) => shares.push(share),
    new AbortController().signal,
  )
  const { last } = Upload
  expect(last.opened).toEqual(['POST', '/scan?name=plan%20%26%20detail.tif'])
  expect(last.headers).toEqual(['Content-Type', 'application/octet-stream'])
  expect(last.body).toBe(scan)
  last.upload.onprogress?.({ loaded: 1, total: 4 })
  last.responseText = '{"ok":true,"id":"U1"}'
  last.onload?.()
  expect([await id, shares]).toEqual(['U1', [0.25]])
})

test('a scan that is refused, lost or stopped says so', async () => {
  const host = localHost(() => undefined)
  const abort = new AbortController()
  const send = () => host.sendScan(scan, () => undefined, abort.signal)
  const refused = send()
  Upload.last.responseText = '{"ok":false,"reason":{"code":"full","parts":{}},"sentence":"The disk is full."}'
  Upload.last.onload?.()
  await expect(refused).rejects.toMatchObject({
    reason: { code: 'full', parts: {} },
    message: 'The disk is full.',
  })
  const lost = send()
  Upload.last.onerror?.()
  await expect(lost).rejects.toThrow(/plan & detail.tif.*did not arrive/)
  const stopped = send()
  abort.abort()
  await expect(stopped).rejects.toMatchObject({ name: 'AbortError' })
  await expect(send()).rejects.toMatchObject({ name: 'AbortError' })
})
