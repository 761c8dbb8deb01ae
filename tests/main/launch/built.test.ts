import { type ChildProcess, spawn } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { afterEach, describe, expect, test } from 'vitest'
import { type LaunchOptions, launch } from '../../../src/main/launch/launch.ts'
import { folderSnapshot } from '../fixtures/folder-snapshot.ts'
import { temporaryFolder } from '../fixtures/temporary-folder.ts'
import { workshopJob } from '../fixtures/workshop-job.ts'
import { listening } from '../local/event-stream.ts'
import { type PageWindow, windowOf } from '../local/window-of.ts'
import { machine } from './machine.ts'

const PROGRAM = resolve(import.meta.dirname, '../../../bin/scantling.js')
const ADDRESS = /^http:\/\/127\.0\.0\.1:\d+\/\?key=[\w-]{43}$/m

const children: ChildProcess[] = []
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL')
})

interface Running {
  child: ChildProcess
  /** Resolves with the address once it is printed. */
  address: Promise<string>
  ended: Promise<{ code: number | null; stdout: string; stderr: string }>
}

/** The command line as it is built, on a machine without a display. */
function open(home: string, ...args: string[]): Running {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, SCANTLING_WINDOW: ___, ...env } = process.env
  const child = spawn(process.execPath, [PROGRAM, 'open', ...args], { env: { ...env, SCANTLING_HOME: home } })
  children.push(child)
  let [stdout, stderr] = ['', '']
  const ended = new Promise<{ code: number | null; stdout: string; stderr: string }>((done) => {
    child.on('close', (code) => done({ code, stdout, stderr }))
  })
  const address = new Promise<string>((found, failed) => {
    child.stdout.setEncoding('utf8').on('data', (data: string) => {
      stdout += data
      const [match] = ADDRESS.exec(stdout) ?? []
      if (match !== undefined) found(match)
    })
    child.on('close', () => failed(new Error(`It ended without an address: ${stdout}${stderr}`)))
  })
  address.catch(() => undefined)
  child.stderr.setEncoding('utf8').on('data', (data: string) => {
    stderr += data
  })
  return { child, address, ended }
}

async function opened(running: Running): Promise<PageWindow> {
  const address = await running.address
  return windowOf({ newAddress: () => address })
}

describe('scantling open', () => {
  test('prints the address and nothing else where it is told to, and ends when its window is closed', async () => {
    const { folder } = await workshopJob()
    const running = open(await temporaryFolder(), folder, '--print')
    const window = await opened(running)
    const looked = JSON.parse((await window.ask('look', {})).body) as { answer: { opened: { job: object } } }
    expect(looked.answer.opened.job).toMatchObject({ title: 'Drum of the chain ferry' })
    const page = await window.get('/')
    expect(page.body).toContain('<script')
    const stream = await listening(window)
    stream.leave()
    const left = performance.now()
    const { code, stdout, stderr } = await running.ended
    // What a slow machine needs to load its window again is waited for, and no half a minute.
    expect(performance.now() - left).toBeGreaterThan(9_900)
    expect(performance.now() - left).toBeLessThan(30_000)
    expect([code, stderr]).toEqual([0, ''])
    expect(stdout).toBe(`${await running.address}\n`)
  })

  test('says why no window was opened, and gives the address', async () => {
    const home = await temporaryFolder()
    const running = open(home, '--sample')
    const window = await opened(running)
    const looked = JSON.parse((await window.ask('look', {})).body) as { answer: { opened: object } }
    expect(looked.answer.opened).toMatchObject({ sample: true, writable: true })
    running.child.kill('SIGTERM')
    const { code, stdout } = await running.ended
    expect(code).toBe(0)
    // On macOS and Windows there is always a display.
    if (process.platform === 'linux') {
      expect(stdout).toContain('No window was opened, because there is no display here.\n')
    }
    expect(Object.keys(await folderSnapshot(home))).toContain('jobs/')
  })

  test.each(['SIGINT', 'SIGTERM'] as const)('saves the job and gives it back on %s', async (signal) => {
    const { folder } = await workshopJob()
    const running = open(await temporaryFolder(), folder, '--print')
    const window = await opened(running)
    await listening(window)
    const edit = { do: 'adopt', dimension: 'drum_length', adopt: 'printed' }
    expect(JSON.parse((await window.ask('edit', { edit, by: 'A. Rivet' })).body)).toMatchObject({ ok: true })
    running.child.kill(signal)
    expect(await running.ended).toMatchObject({ code: 0, stderr: '' })
    expect(await readFile(join(folder, 'job.json'), 'utf8')).toContain('"adopt": "printed"')
    const left = Object.keys(await folderSnapshot(folder))
    expect(left).not.toContain('.lock')
  })

  test('refuses a folder that holds no job in one sentence, before any window is opened', async () => {
    const home = await temporaryFolder()
    const empty = await temporaryFolder()
    for (const args of [[empty], [join(empty, 'nowhere')], [empty, '--sample'], [empty, '--print', 'more']]) {
      const { code, stdout, stderr } = await open(home, ...args).ended
      expect([args, code, stdout]).toEqual([args, 2, ''])
      expect(stderr).toMatch(/^[^\n]+\.\n$/)
    }
    expect(await folderSnapshot(home)).toEqual({})
  })

  test('logs what is refused without the key, and goes on', async () => {
    const running = open(await temporaryFolder(), '--print')
    const window = await opened(running)
    expect((await window.get('/?key=wrong')).status).toBe(303)
    expect((await window.get('/../../etc/passwd')).status).toBe(404)
    running.child.kill('SIGTERM')
    const { code, stderr } = await running.ended
    expect([code, stderr]).toEqual([0, 'Note: Refused GET /../../etc/passwd: no such page.\n'])
  })
})

/** In place of the ten seconds that a person is given to load the window again. */
const LINGER = 200

describe('the choice of a window', () => {
  /** Does what a browser does with the address that it is started on; half a second later it is closed. */
  const browse = async (args: readonly string[]): Promise<{ code: number }> => {
    const address = args.find((arg) => arg.startsWith('--app='))?.slice('--app='.length) ?? ''
    const window = await windowOf({ newAddress: () => address })
    const stream = await listening(window)
    await new Promise((done) => setTimeout(done, 500))
    stream.leave()
    return { code: 0 }
  }

  const launched = async (is: Parameters<typeof machine>[0], options: Partial<LaunchOptions> = {}) => {
    const said: string[] = []
    const home = await temporaryFolder()
    const wait = (milliseconds: number) =>
      new Promise<void>((done) => setTimeout(done, Math.min(milliseconds, 20)).unref())
    const surroundings = machine({ wait, ...is, env: { DISPLAY: ':0', SCANTLING_HOME: home, ...is?.env } })
    await launch({
      opens: 'start',
      addressOnly: false,
      say: (sentence) => said.push(sentence),
      giveAddress: (address) => {
        said.push('ADDRESS')
        void browse([`--app=${address}`])
      },
      log: (line) => said.push(line),
      surroundings,
      linger: LINGER,
      ...options,
    })
    return { said, started: surroundings.started.map(([program]) => program) }
  }

  const runtime = {
    '/e/package.json': '{"version":"45.4.1"}',
    '/e/path.txt': 'electron',
    '/e/dist/electron': '',
  }
  const packageFolder = () => '/e'
  const chrome = { '/usr/bin/google-chrome': '' }

  test('is the desktop one where the Electron runtime is there', async () => {
    const { said, started } = await launched({ files: runtime, packageFolder, ends: () => ({ code: 0 }) })
    expect(started).toEqual(['/e/dist/electron'])
    expect(said).toEqual([
      'Opening the workbench in its desktop window, because the Electron runtime is there.',
    ])
  })

  test('is a browser’s where it is not, and says why', async () => {
    const { said, started } = await launched({
      files: { ...chrome, '/e/package.json': runtime['/e/package.json'] },
      packageFolder,
      ends: (_, args) => browse(args),
    })
    expect(started).toEqual(['/usr/bin/google-chrome'])
    expect(said).toEqual([
      'Opening the workbench in a window of Google Chrome, because the Electron runtime is not there, and ' +
        'github.com did not offer it within two seconds.',
    ])
  })

  test('falls to the next where one dies at once, and in the end to an address', async () => {
    const { said, started } = await launched({
      files: { ...runtime, ...chrome },
      packageFolder,
      ends: (program) => ({ code: program.includes('chrome') ? 21 : 133 }),
    })
    expect(started).toEqual(['/e/dist/electron', '/usr/bin/google-chrome'])
    expect(said).toEqual([
      expect.stringContaining('its desktop window'),
      'Opening the workbench in a window of Google Chrome, because the desktop window ended at once (exit code 133).',
      'No window was opened, because the desktop window ended at once (exit code 133), and Google Chrome ended at ' +
        'once (exit code 21).',
      expect.stringContaining('at this address'),
      'ADDRESS',
    ])
  })

  test('is none for root and without a display, and nothing is downloaded or started for it', async () => {
    for (const [is, why] of [
      [{ userId: 0 }, 'for root'],
      [{ env: { DISPLAY: '' } }, 'no display'],
    ] as const) {
      const { said, started } = await launched({ ...is, files: { ...runtime, ...chrome }, packageFolder })
      expect(started).toEqual([])
      expect(said).toEqual([expect.stringContaining(why), expect.any(String), 'ADDRESS'])
    }
  })

  test('is none where the environment says so', async () => {
    const files = { ...runtime, ...chrome }
    const { said, started } = await launched({ env: { SCANTLING_WINDOW: 'none' }, files, packageFolder })
    expect([said, started]).toEqual([['ADDRESS'], []])
  })
})
