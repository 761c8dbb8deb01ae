import { existsSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import sharp from 'sharp'
import { expect, test, vi } from 'vitest'
import { pictureAddress } from '../../../src/contract/picture-addresses.ts'
import type { Reply } from '../../../src/contract/reply.ts'
import type { RequestAnswer, RequestName } from '../../../src/contract/requests.ts'
import { startDesktop } from '../../../src/main/electron/start-desktop.ts'
import { Workbench } from '../../../src/main/services/workbench/workbench.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { app, happened, kept, startAfresh } from './fixtures/electron-stand-in.ts'
import { builtPage } from './fixtures/started.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

const SAMPLE = resolve(import.meta.dirname, '../../../samples/deck-ventilator')

async function ask<N extends RequestName>(name: N, args: unknown): Promise<RequestAnswer<N>> {
  const [window] = kept.windows
  const handler = kept.ipc.get('ask') as unknown as (...args: unknown[]) => Promise<Reply<N>>
  const sender = window?.webContents
  const reply = await handler({ sender, senderFrame: sender?.mainFrame }, name, args)
  if (!reply.ok) throw new Error(reply.sentence)
  return reply.answer
}

const fetchOwn = (path: string, init?: RequestInit): Promise<Response> => {
  const [session] = kept.sessions.values()
  return session?.call(
    'protocol scantling',
    new Request(`scantling://bench/${path}`, init),
  ) as Promise<Response>
}

test('with the workbench itself: the sample opens, a scan becomes a job, its picture shows, quitting gives it back', async () => {
  startAfresh()
  const home = await temporaryFolder()
  await startDesktop({
    root: await builtPage(),
    version: '1.2.3',
    places: { settings: join(home, 'settings'), shelf: join(home, 'jobs') },
    given: { sample: true },
    log: (what, subject) => happened.push(`log ${what} ${subject ?? ''}`),
    makeWorkbench: (options) => new Workbench({ ...options, places: { ...options.places, sample: SAMPLE } }),
  })
  const start = await ask('look', {})
  expect(start).toMatchObject({ host: 'electron', version: '1.2.3', choosesFolders: true })
  expect(start.opened).toMatchObject({ sample: true, writable: true })

  const png = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#fff' } })
    .png()
    .toBuffer()
  const upload = crypto.randomUUID()
  const sent = await fetchOwn(`scan?name=plan.png&upload=${upload}&piece=0&of=1`, {
    method: 'POST',
    body: new Uint8Array(png),
  })
  const { id } = (await sent.json()) as { id: string }
  const made = await ask('new-job', {
    title: 'Winch drum',
    unit: 'in',
    by: 'A. Rivet',
    uploads: [{ upload: id }],
  })
  expect(made.opened?.job).toMatchObject({ title: 'Winch drum', sheets: [{ id: 'S1' }] })

  const { version } = await ask('show-sheet', { sheet: 'S1' })
  const overview = pictureAddress({ sheet: 'S1', version, kind: 'overview' })
  await vi.waitFor(async () => expect((await fetchOwn(overview)).status).toBe(200), 10_000)
  const picture = await fetchOwn(overview)
  expect(await sharp(Buffer.from(await picture.arrayBuffer())).metadata()).toMatchObject({
    width: 60,
    height: 40,
  })
  expect(kept.windows[0]?.webContents.sent).toContainEqual([
    'event',
    expect.objectContaining({ kind: 'bench', state: expect.objectContaining({ opened: expect.anything() }) }),
  ])

  app.quit()
  await vi.waitFor(() => expect(happened).toContain('end'), 10_000)
  for (const folder of await readdir(join(home, 'jobs'))) {
    expect(existsSync(join(home, 'jobs', folder, 'job.json'))).toBe(true)
    expect((await readdir(join(home, 'jobs', folder))).filter((name) => /lock/.test(name))).toEqual([])
  }
  expect(kept.messages).toEqual([])
})
