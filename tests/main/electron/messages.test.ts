import { expect, test, vi } from 'vitest'
import type { Reply } from '../../../src/contract/reply.ts'
import { MESSAGE_BYTES } from '../../../src/contract/requests.ts'
import { emptyBench } from './fixtures/bench-stand-in.ts'
import { type BrowserWindow, kept } from './fixtures/electron-stand-in.ts'
import { type Started, started } from './fixtures/started.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

const fromPage = (window: BrowserWindow) => ({
  sender: window.webContents,
  senderFrame: window.webContents.mainFrame,
})

async function send(event: unknown, ...message: unknown[]): Promise<Reply> {
  const handler = kept.ipc.get('ask') as ((...args: unknown[]) => Promise<Reply>) | undefined
  if (handler === undefined) throw new Error('Nobody listens to asks.')
  return handler(event, ...message)
}

/** What the workbench was asked after its start. */
const askedSince = ({ bench }: Started): unknown[] => bench.asked.slice(1)

test('one channel carries what the page asks, and the reply goes back as it is', async () => {
  const all = await started()
  const reply = await send(fromPage(all.window), 'edit', { edit: { do: 'add view' }, by: 'P1' })
  expect([...kept.ipc.keys()]).toEqual(['ask'])
  expect(reply).toEqual({ ok: true, answer: emptyBench })
  expect(askedSince(all)).toEqual([['edit', { edit: { do: 'add view' }, by: 'P1' }]])
  expect(all.log).toEqual([])
})

test.each<[string, (window: BrowserWindow) => unknown]>([
  ['another window', () => ({ sender: {}, senderFrame: { url: 'scantling://bench/' } })],
  [
    'a frame inside the page',
    ({ webContents }) => ({
      sender: webContents,
      senderFrame: { url: 'scantling://bench/', parent: webContents.mainFrame },
    }),
  ],
  ['a frame that is gone', ({ webContents }) => ({ sender: webContents, senderFrame: null })],
  [
    'a page from elsewhere in the window',
    ({ webContents }) => {
      webContents.mainFrame.url = 'http://example.com/'
      return { sender: webContents, senderFrame: webContents.mainFrame }
    },
  ],
  [
    'another host of the scheme',
    ({ webContents }) => {
      webContents.mainFrame.url = 'scantling://other/'
      return { sender: webContents, senderFrame: webContents.mainFrame }
    },
  ],
])('an ask from %s is refused, and logged in one line', async (_who, event) => {
  const all = await started()
  expect(await send(event(all.window), 'look', {})).toMatchObject({ ok: false, sentence: expect.any(String) })
  expect(askedSince(all)).toEqual([])
  expect(all.log).toEqual(['refused a message: from a foreign sender'])
})

test.each<[string, unknown[]]>([
  ['nothing', []],
  ['a name alone', ['look']],
  ['more than a name and its arguments', ['look', {}, 'more']],
  ['arguments that are no JSON', ['look', undefined]],
  ['a number beyond JSON', ['look', { n: 10n }]],
  ['a name that is no text', [{ toString: 'look' }, {}]],
  ['too large arguments', ['edit', { edit: { do: 'x'.repeat(MESSAGE_BYTES) } }]],
  ['too large arguments in few characters', ['edit', '€'.repeat(MESSAGE_BYTES / 2)]],
  ['a too large name', ['x'.repeat(MESSAGE_BYTES), {}]],
])('an ask that holds %s is refused, and the next right one is answered', async (_what, message) => {
  const all = await started()
  expect(await send(fromPage(all.window), ...message)).toMatchObject({
    ok: false,
    sentence: expect.any(String),
  })
  expect(askedSince(all)).toEqual([])
  expect(all.log).toHaveLength(1)
  expect(await send(fromPage(all.window), 'look', {})).toMatchObject({ ok: true })
})

test('arguments that refer to themselves, or are nested beyond measure, are refused', async () => {
  const all = await started()
  const round: Record<string, unknown> = {}
  round['round'] = round
  let deep: unknown = 0
  for (let i = 0; i < 200_000; i++) deep = [deep]
  for (const args of [round, deep]) {
    expect(await send(fromPage(all.window), 'edit', args)).toMatchObject({ ok: false })
  }
  expect(askedSince(all)).toEqual([])
  expect(all.log).toHaveLength(2)
})

test('a message just within the bound is taken', async () => {
  const { window } = await started()
  const args = { text: 'x'.repeat(MESSAGE_BYTES - 'edit'.length - '{"text":""}'.length) }
  expect(await send(fromPage(window), 'edit', args)).toMatchObject({ ok: true })
  expect(await send(fromPage(window), 'edit', { text: `${args.text}x` })).toMatchObject({ ok: false })
})

test('the workbench gets plain JSON, as from the other host', async () => {
  const all = await started()
  await send(fromPage(all.window), 'edit', { when: new Date(0), gone: undefined, map: new Map([[1, 2]]) })
  expect(askedSince(all)).toEqual([['edit', { when: '1970-01-01T00:00:00.000Z', map: {} }]])
})

test('what the workbench tells reaches the window, until it is closed', async () => {
  const { window, bench } = await started()
  bench.tell({ kind: 'bench', state: emptyBench })
  expect(window.webContents.sent).toEqual([['event', { kind: 'bench', state: emptyBench }]])
  window.destroy()
  bench.tell({ kind: 'bench', state: emptyBench })
  expect(window.webContents.sent).toHaveLength(1)
  expect(kept.ipc.size).toBe(0)
})
