import { describe, expect, test } from 'vitest'
import { openBrowserWindow } from '../../../src/main/launch/browser-window.ts'
import { browsers } from '../../../src/main/launch/browsers.ts'
import { openDesktopWindow } from '../../../src/main/launch/desktop-window.ts'
import { electronRuntime } from '../../../src/main/launch/electron-runtime.ts'
import { fetchElectron } from '../../../src/main/launch/fetch-electron.ts'
import { whyNoWindow } from '../../../src/main/launch/why-no-window.ts'
import { ELECTRON, machine, PACKAGE, RUNTIME } from './machine.ts'

describe('whether a window can be opened at all', () => {
  test('on Linux it takes a display, X11 or Wayland', () => {
    expect(whyNoWindow(machine({ env: {} }))).toBe('there is no display here')
    expect(whyNoWindow(machine({ env: { DISPLAY: '', WAYLAND_DISPLAY: '' } }))).toBe(
      'there is no display here',
    )
    expect(whyNoWindow(machine({ env: { DISPLAY: ':0' } }))).toBeUndefined()
    expect(whyNoWindow(machine({ env: { WAYLAND_DISPLAY: 'wayland-0' } }))).toBeUndefined()
  })

  test('root on Linux gets none, for it would take the sandbox away', () => {
    expect(whyNoWindow(machine({ userId: 0 }))).toContain('root')
    expect(whyNoWindow(machine({ userId: 0, platform: 'darwin', env: {} }))).toBeUndefined()
  })

  test('macOS and Windows have a display', () => {
    expect(whyNoWindow(machine({ platform: 'darwin', env: {} }))).toBeUndefined()
    expect(whyNoWindow(machine({ platform: 'win32', env: {}, userId: undefined }))).toBeUndefined()
  })
})

describe('the Electron runtime', () => {
  test('is there when the package says where, and the program is there', () => {
    expect(electronRuntime(machine({ files: RUNTIME }))).toBe(`${ELECTRON}/dist/electron`)
  })

  test('is not there without the package, its note of the program, or the program', () => {
    expect(electronRuntime(machine())).toBeUndefined()
    expect(electronRuntime(machine({ files: PACKAGE }))).toBeUndefined()
    expect(
      electronRuntime(machine({ files: { ...PACKAGE, [`${ELECTRON}/path.txt`]: 'electron' } })),
    ).toBeUndefined()
    const { [`${ELECTRON}/path.txt`]: _, ...halfDownloaded } = RUNTIME
    expect(electronRuntime(machine({ files: halfDownloaded }))).toBeUndefined()
  })

  test('may be kept elsewhere', () => {
    const files = { ...PACKAGE, [`${ELECTRON}/path.txt`]: 'electron\n', '/opt/runtime/electron': '' }
    const env = { ELECTRON_OVERRIDE_DIST_PATH: '/opt/runtime' }
    expect(electronRuntime(machine({ files, env }))).toBe('/opt/runtime/electron')
  })

  test('is found in a Windows folder', () => {
    const folder = 'C:\\app\\node_modules\\electron'
    const files = { [`${folder}\\path.txt`]: 'electron.exe', [`${folder}\\dist\\electron.exe`]: '' }
    const windows = machine({ files, platform: 'win32', env: {}, packageFolder: () => folder })
    expect(electronRuntime(windows)).toBe(`${folder}\\dist\\electron.exe`)
  })
})

describe('the download of the Electron runtime', () => {
  const said: string[] = []
  const fetched = (surroundings: ReturnType<typeof machine>) => {
    said.length = 0
    return fetchElectron(surroundings, (sentence) => said.push(sentence))
  }

  test('runs the package’s own installer once its place has answered, and says so first', async () => {
    const ready = machine({ files: PACKAGE, answers: () => true, ends: () => ({ code: 0 }) })
    expect(await fetched(ready)).toBeUndefined()
    expect(ready.tried).toEqual([
      'https://github.com/electron/electron/releases/download/v45.4.1/SHASUMS256.txt',
    ])
    expect(ready.started).toEqual([[process.execPath, `${ELECTRON}/install.js`]])
    expect(said).toEqual([expect.stringContaining('Downloading the Electron runtime')])
  })

  test('is not tried where its place does not answer', async () => {
    const offline = machine({ files: PACKAGE })
    expect(await fetched(offline)).toContain('github.com did not offer it within two seconds')
    expect([offline.started, said]).toEqual([[], []])
  })

  test.each(['CI', 'SCANTLING_NO_DOWNLOAD'])('asks for nothing where %s is set', async (name) => {
    const quiet = machine({ files: PACKAGE, answers: () => true, env: { [name]: '1' } })
    expect(await fetched(quiet)).toContain(name)
    expect([quiet.tried, quiet.started]).toEqual([[], []])
    const allowed = machine({
      files: PACKAGE,
      answers: () => true,
      env: { [name]: 'false' },
      ends: () => ({ code: 0 }),
    })
    expect(await fetched(allowed)).toBeUndefined()
  })

  test('asks a mirror that a person has set', async () => {
    const env = { ELECTRON_MIRROR: 'https://mirror.example/electron' }
    const mirrored = machine({ files: PACKAGE, env })
    expect(await fetched(mirrored)).toContain('mirror.example did not offer it')
    expect(mirrored.tried).toEqual(['https://mirror.example/electron/v45.4.1/SHASUMS256.txt'])
    expect(await fetched(machine({ files: PACKAGE, env: { ELECTRON_MIRROR: 'no address' } }))).toContain(
      '"no address" is no address',
    )
  })

  test('that fails, or takes longer than five minutes, is given up', async () => {
    const failing = machine({ files: PACKAGE, answers: () => true, ends: () => ({ code: 1 }) })
    expect(await fetched(failing)).toBe('the download of the Electron runtime failed')
    const waits: number[] = []
    const hanging = machine({
      files: PACKAGE,
      answers: () => true,
      wait: async (milliseconds) => void waits.push(milliseconds),
    })
    expect(await fetched(hanging)).toContain('longer than five minutes')
    expect(waits).toEqual([300_000])
    expect(hanging.started.at(-1)).toEqual([process.execPath, 'stopped'])
  })

  test('is no matter where Electron is not installed', async () => {
    expect(await fetched(machine())).toBe('Electron is not installed')
  })
})

describe('installed browsers', () => {
  test('on Linux are found on the path and in the usual places, each kind once, Chrome first', () => {
    const files = {
      '/usr/bin/chromium': '',
      '/opt/bin/google-chrome': '',
      '/usr/bin/google-chrome': '',
      '/usr/bin/microsoft-edge': '',
    }
    const found = browsers(
      machine({ files, env: { PATH: '/opt/bin:/usr/bin' } }),
      '/home/rivet/.config/scantling',
    )
    expect(found).toEqual([
      {
        name: 'Google Chrome',
        program: '/opt/bin/google-chrome',
        profile: '/home/rivet/.config/scantling/window-chrome',
      },
      {
        name: 'Microsoft Edge',
        program: '/usr/bin/microsoft-edge',
        profile: '/home/rivet/.config/scantling/window-edge',
      },
      {
        name: 'Chromium',
        program: '/usr/bin/chromium',
        profile: '/home/rivet/.config/scantling/window-chromium',
      },
    ])
  })

  test('are not taken from the folder that one happens to stand in', () => {
    const files = { 'google-chrome': '', './google-chrome': '', 'bin/google-chrome': '' }
    expect(browsers(machine({ files, env: { PATH: '.:bin:' } }), '/s')).toEqual([])
  })

  test('a Chromium from a snap keeps its things where it may', () => {
    const files = { '/usr/bin/chromium-browser': '', '/snap/bin/chromium': '' }
    const [chromium] = browsers(machine({ files }), '/home/rivet/.config/scantling')
    expect(chromium?.profile).toBe('/home/rivet/snap/chromium/common/scantling/window-chromium')
  })

  test('on Windows are found in each of its program folders', () => {
    const edge = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe'
    const chrome = 'C:\\Users\\rivet\\AppData\\Local\\Google\\Chrome\\Application\\chrome.exe'
    const env = {
      ProgramFiles: 'C:\\Program Files',
      'ProgramFiles(x86)': 'C:\\Program Files (x86)',
      LOCALAPPDATA: 'C:\\Users\\rivet\\AppData\\Local',
    }
    const windows = machine({ platform: 'win32', env, files: { [edge]: '', [chrome]: '' } })
    expect(browsers(windows, 'C:\\s').map(({ program, profile }) => [program, profile])).toEqual([
      [chrome, 'C:\\s\\window-chrome'],
      [edge, 'C:\\s\\window-edge'],
    ])
  })

  test('on macOS are found among its applications, a person’s own too', () => {
    const own = '/Users/rivet/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'
    const mac = machine({ platform: 'darwin', home: '/Users/rivet', env: {}, files: { [own]: '' } })
    expect(browsers(mac, '/s').map(({ program }) => program)).toEqual([own])
  })
})

describe('the window of a browser', () => {
  const chrome = { name: 'Google Chrome', program: '/usr/bin/google-chrome', profile: '/s/window-chrome' }
  const host = (windowAfter: number) => {
    let looks = 0
    return {
      newAddress: () => 'http://127.0.0.1:1/?key=k',
      hasWindow: () => looks++ >= windowAfter,
      ended: new Promise<void>(() => undefined),
    }
  }

  test('is an application window with what it keeps apart from a person’s own, its sandbox on', async () => {
    const here = machine()
    expect(await openBrowserWindow(chrome, host(3), here)).toBeUndefined()
    const [program, ...args] = here.started[0] ?? []
    expect(program).toBe('/usr/bin/google-chrome')
    expect(args).toEqual(
      expect.arrayContaining(['--app=http://127.0.0.1:1/?key=k', '--user-data-dir=/s/window-chrome']),
    )
    expect(args.join(' ')).not.toMatch(/sandbox|disable-web-security|remote-debugging/)
  })

  test('may be taken over by one that runs already', async () => {
    expect(await openBrowserWindow(chrome, host(5), machine({ ends: () => ({ code: 0 }) }))).toBeUndefined()
  })

  test('is waited for no longer once the host has ended, however its browser ended', async () => {
    for (const ended of [Promise.resolve(), Promise.reject(new Error('not saved'))]) {
      const dying = machine({ ends: () => ({ code: null, problem: 'SIGINT' }) })
      const waits: number[] = []
      const here = { ...dying, wait: async (milliseconds: number) => void waits.push(milliseconds) }
      expect(await openBrowserWindow(chrome, { ...host(Infinity), ended }, here)).toBeUndefined()
      expect(waits.length).toBeLessThan(3)
    }
  })

  test('that dies at once, or never shows, is told of', async () => {
    const dying = machine({ ends: () => ({ code: 21 }) })
    expect(await openBrowserWindow(chrome, host(Infinity), dying)).toBe(
      'Google Chrome ended at once (exit code 21)',
    )
    const missing = machine({ ends: () => ({ code: null, problem: 'spawn EACCES' }) })
    expect(await openBrowserWindow(chrome, host(Infinity), missing)).toBe(
      'Google Chrome ended at once (spawn EACCES)',
    )
    expect(await openBrowserWindow(chrome, host(Infinity), machine())).toBe(
      'Google Chrome showed no window within 20 seconds',
    )
  })
})

describe('the desktop window', () => {
  const later = <T>(value: T): Promise<T> => new Promise((resolve) => setTimeout(() => resolve(value), 30))

  test('that is closed ends well, soon or late', async () => {
    const args = ['/app/out/main/electron.js', '/jobs/ventilator']
    const soon = machine({ ends: () => ({ code: 0 }) })
    expect(await openDesktopWindow('/electron', args, soon)).toBeUndefined()
    expect(soon.started).toEqual([['/electron', ...args]])
    expect(
      await openDesktopWindow('/electron', args, machine({ ends: () => later({ code: 0 }) })),
    ).toBeUndefined()
  })

  test('that dies at once gives way to another kind of window', async () => {
    const dying = machine({ ends: () => ({ code: null, problem: 'SIGTRAP' }), wait: () => later(undefined) })
    expect(await openDesktopWindow('/electron', [], dying)).toBe('the desktop window ended at once (SIGTRAP)')
  })

  test('that fails later is a failure, and says what is kept', async () => {
    const failing = machine({ ends: () => later({ code: 3 }) })
    await expect(openDesktopWindow('/electron', [], failing)).rejects.toThrow(/exit code 3.*job folder/)
  })

  test('leaves no handler of signals behind', async () => {
    const before = [process.listenerCount('SIGINT'), process.listenerCount('SIGTERM')]
    await openDesktopWindow('/electron', [], machine({ ends: () => ({ code: 0 }) }))
    expect([process.listenerCount('SIGINT'), process.listenerCount('SIGTERM')]).toEqual(before)
  })
})
