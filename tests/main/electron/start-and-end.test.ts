import { expect, test, vi } from 'vitest'
import { readGiven } from '../../../src/main/electron/given.ts'
import { startDesktop } from '../../../src/main/electron/start-desktop.ts'
import { ServiceError } from '../../../src/main/services/service-error.ts'
import { reason } from '../../../src/main/services/words/services-words.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { jobOnBench } from './fixtures/bench-stand-in.ts'
import { app, given, happened, kept, Preventable, startAfresh } from './fixtures/electron-stand-in.ts'
import { started } from './fixtures/started.ts'

vi.mock('electron', () => import('./fixtures/electron-stand-in.ts'))

test('the window shows the page once the job is open, under the person’s own settings', async () => {
  const { bench, made } = await started({ folder: '/jobs/ventilator', sample: false })
  expect(happened).toEqual(['path userData', 'sandbox', 'lock', 'scheme', 'ready', 'show scantling://bench/'])
  expect(bench.opened).toEqual(['/jobs/ventilator'])
  expect(kept.paths.get('userData')).toMatch(/\.config.scantling.desktop$/)
  expect(made).toMatchObject({
    host: 'electron',
    version: '1.2.3',
    places: {
      settings: '/home/rivet/.config/scantling',
      shelf: '/home/rivet/Scantling',
      sample: expect.stringMatching(/samples.deck-ventilator$/),
      temporary: expect.stringMatching(/scantling.temporary$/),
    },
  })
})

test('the sample is opened when it is asked for, and nothing when nothing is', async () => {
  expect((await started({ sample: true })).bench.opened).toEqual(['the sample'])
  expect((await started({ sample: false })).bench.opened).toEqual([])
})

test('a folder that can’t be opened is told in a dialog, and the window shows what can be done', async () => {
  const { bench } = await started({ folder: '/jobs/none', sample: false }, (bench) => {
    bench.openingFails = new ServiceError(reason('job-folder.no-job', { folder: '/jobs/none' }))
  })
  expect(bench.opened).toEqual([])
  expect(kept.messages).toMatchObject([{ type: 'error', message: expect.stringContaining('/jobs/none') }])
  expect(kept.recentDocuments).toEqual([])
  expect(happened.at(-1)).toBe('show scantling://bench/')
})

test('a page that was not built is said, and no window opens', async () => {
  startAfresh()
  const options = {
    root: await temporaryFolder(),
    version: '1.2.3',
    places: { settings: '/s', shelf: '/j' },
    given: { sample: false },
    log: () => undefined,
    makeWorkbench: () => {
      throw new Error('not reached')
    },
  }
  await expect(startDesktop(options)).rejects.toThrow('The window has not been built yet: run npm run build')
  expect(kept.windows).toEqual([])
})

test('a second instance hands over what it was told to open, and ends', async () => {
  startAfresh()
  given.isFirstInstance = false
  await startDesktop({
    root: '/nowhere',
    version: '1.2.3',
    places: { settings: '/s', shelf: '/j' },
    given: { folder: '/jobs/winch', sample: false },
    log: () => undefined,
    makeWorkbench: () => {
      throw new Error('not reached')
    },
  })
  expect(kept.lockData).toEqual([{ folder: '/jobs/winch', sample: false }])
  expect(happened).toEqual(['path userData', 'sandbox', 'lock', 'quit', 'end'])
})

test('the first instance opens what a second one hands over, and comes forward', async () => {
  const { bench } = await started()
  app.emit('second-instance', {}, ['electron', '--flag'], '/tmp', { folder: '/jobs/winch', sample: false })
  await vi.waitFor(() => expect(bench.opened).toEqual(['/jobs/winch']))
  expect(happened.slice(-2)).toEqual(['restore', 'focus'])
})

test.each([undefined, null, 'text', { folder: 7, sample: true }, { folder: 'a', sample: true, more: 1 }])(
  'what a second instance hands over malformed opens nothing: %j',
  async (data) => {
    const { bench } = await started()
    app.emit('second-instance', {}, [], '/tmp', data)
    await new Promise((resolve) => setTimeout(resolve, 10))
    expect([bench.opened, happened.at(-1)]).toEqual([[], 'focus'])
  },
)

test('a folder that the system hands over is opened', async () => {
  const { bench } = await started()
  const event = new Preventable()
  app.emit('open-file', event, '/jobs/winch')
  await vi.waitFor(() => expect(bench.opened).toEqual(['/jobs/winch']))
  expect(event.defaultPrevented).toBe(true)
})

test('a folder that the system hands over before the app is ready is opened when it is', async () => {
  const event = new Preventable()
  vi.spyOn(app, 'whenReady').mockImplementationOnce(async () => {
    app.emit('open-file', event, '/jobs/winch')
  })
  const { bench } = await started()
  await vi.waitFor(() => expect(bench.opened).toEqual(['/jobs/winch']))
  expect(event.defaultPrevented).toBe(true)
})

test.each([
  [['jobs/winch'], { folder: expect.stringMatching(/^(\/home|[A-Z]:).*winch$/), sample: false }],
  [['--sample'], { sample: true }],
  [['--enable-logging', '/jobs/winch'], { folder: expect.stringMatching(/winch$/), sample: false }],
  [[], { sample: false }],
])('%j on the command line', (args, expected) => {
  expect(readGiven(args, '/home/rivet')).toEqual(expected)
})

test('closing the window saves and closes the job, then the window goes, then the program ends', async () => {
  const { window } = await started({ sample: true })
  happened.length = 0
  window.close()
  window.close()
  expect(window.isDestroyed()).toBe(false)
  await vi.waitFor(() => expect(happened).toContain('end'))
  expect(happened).toEqual(['closing the job', 'job closed', 'destroy', 'quit', 'end', 'quit'])
})

test('quitting closes the job in the same order', async () => {
  await started({ sample: true })
  happened.length = 0
  app.quit()
  await vi.waitFor(() => expect(happened).toContain('end'))
  expect(happened).toEqual(['quit', 'closing the job', 'job closed', 'destroy', 'quit', 'end', 'quit'])
})

test('a job that can’t be saved is told before the window goes', async () => {
  const { window } = await started({ sample: true }, (bench) => {
    bench.closingFails = new ServiceError(
      reason('job-file.not-written', {
        path: 'job.json',
        cause: reason('system.refused', { error: 'ENOSPC' }),
      }),
    )
  })
  happened.length = 0
  window.close()
  await vi.waitFor(() => expect(happened).toContain('end'))
  expect(happened.slice(0, 3)).toEqual(['closing the job', 'message', 'destroy'])
  expect(kept.messages).toMatchObject([
    {
      type: 'error',
      message:
        'The job could not be closed in order. job.json could not be written because the disk is full; every edit is safe in the history beside it.',
      detail: expect.stringContaining('history'),
    },
  ])
})

test('a page that dies is offered again; the job stays open', async () => {
  const { window, bench, log } = await started({ sample: true })
  window.webContents.emit('render-process-gone', {}, { reason: 'crashed' })
  await vi.waitFor(() => expect(happened.filter((name) => name.startsWith('show'))).toHaveLength(2))
  expect(kept.messages).toMatchObject([{ buttons: ['Show it again', 'Close'] }])
  expect(happened).not.toContain('closing the job')
  expect([bench.opened, log]).toEqual([['the sample'], ['the page died: crashed']])
})

test('the system’s own dialog chooses a folder, one, or none', async () => {
  const { made } = await started()
  expect(await made.chooseJobFolder?.()).toBeUndefined()
  given.chosenFolder = '/jobs/winch'
  expect(await made.chooseJobFolder?.()).toBe('/jobs/winch')
  expect(kept.folderDialogs[0]?.properties).toEqual(['openDirectory'])
})

test('the system is told of a folder once it is open, not when it is chosen', async () => {
  const { made, bench } = await started()
  given.chosenFolder = '/jobs/none'
  await made.chooseJobFolder?.()
  bench.tell({ kind: 'bench', state: jobOnBench })
  expect(kept.recentDocuments).toEqual([])
  made.folderOpened?.('/jobs/winch')
  expect(kept.recentDocuments).toEqual(['/jobs/winch'])
})
