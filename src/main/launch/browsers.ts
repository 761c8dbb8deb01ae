import { posix, win32 } from 'node:path'
import type { LaunchSurroundings } from './surroundings.ts'

/** An installed browser that can show an application window. */
export interface Browser {
  name: string
  program: string
  /** The folder for what it keeps of our window, apart from a person's own browsing. */
  profile: string
}

type Kind = 'Google Chrome' | 'Microsoft Edge' | 'Chromium'

const KEPT_IN: Record<Kind, string> = {
  'Google Chrome': 'window-chrome',
  'Microsoft Edge': 'window-edge',
  Chromium: 'window-chromium',
}

const LINUX: readonly [Kind, string][] = [
  ['Google Chrome', 'google-chrome-stable'],
  ['Google Chrome', 'google-chrome'],
  ['Microsoft Edge', 'microsoft-edge-stable'],
  ['Microsoft Edge', 'microsoft-edge'],
  ['Chromium', 'chromium'],
  ['Chromium', 'chromium-browser'],
]
const SNAP = '/snap/bin/'

const WINDOWS: readonly [Kind, string][] = [
  ['Google Chrome', 'Google\\Chrome\\Application\\chrome.exe'],
  ['Microsoft Edge', 'Microsoft\\Edge\\Application\\msedge.exe'],
  ['Chromium', 'Chromium\\Application\\chrome.exe'],
]

const MACOS: readonly Kind[] = ['Google Chrome', 'Microsoft Edge', 'Chromium']

function candidates({ platform, env, home }: LaunchSurroundings): [Kind, string][] {
  if (platform === 'win32') {
    const roots = [env['ProgramFiles'], env['ProgramFiles(x86)'], env['LocalAppData'] ?? env['LOCALAPPDATA']]
    return WINDOWS.flatMap(([kind, path]) =>
      roots.flatMap((root): [Kind, string][] => (root ? [[kind, win32.join(root, path)]] : [])),
    )
  }
  if (platform === 'darwin') {
    return MACOS.flatMap((kind) =>
      ['/Applications', posix.join(home, 'Applications')].map((root): [Kind, string] => [
        kind,
        `${root}/${kind}.app/Contents/MacOS/${kind}`,
      ]),
    )
  }
  // A relative folder in PATH would let the folder that one happens to stand in choose the program.
  const folders = (env['PATH'] ?? '').split(':').filter((folder) => posix.isAbsolute(folder))
  const usual = ['/usr/bin', '/usr/local/bin', '/snap/bin']
  return LINUX.flatMap(([kind, name]) =>
    [...new Set([...folders, ...usual])].map((folder): [Kind, string] => [kind, posix.join(folder, name)]),
  )
}

/** A browser from a snap is shut out of hidden folders; this one is its own. */
const snapProfile = (home: string, name: string): string =>
  posix.join(home, 'snap', 'chromium', 'common', 'scantling', name)

/**
 * The installed browsers that can show an application window, each kind once, best first.
 * @param settings the folder for the program's settings
 */
export function browsers(surroundings: LaunchSurroundings, settings: string): Browser[] {
  const { platform, home, exists } = surroundings
  const { join } = platform === 'win32' ? win32 : posix
  const snap = platform === 'linux' && exists(`${SNAP}chromium`)
  const found = new Map<Kind, Browser>()
  for (const [name, program] of candidates(surroundings)) {
    if (found.has(name) || !exists(program)) continue
    // Where there is a snap, chromium-browser is a script that starts it.
    const confined = snap && (program.startsWith(SNAP) || program.endsWith('/chromium-browser'))
    const profile = confined ? snapProfile(home, KEPT_IN[name]) : join(settings, KEPT_IN[name])
    found.set(name, { name, program, profile })
  }
  return [...found.values()]
}
