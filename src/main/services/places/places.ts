import { join, posix, win32 } from 'node:path'

/** Where a person's things are, whichever host shows the window. */
export interface Places {
  /** What the program remembers: recent jobs, the window's own data. */
  settings: string
  /** Where new jobs are made. */
  shelf: string
}

/** All that a workbench needs to know of where things are. */
export interface WorkbenchPlaces extends Places {
  /** The sample job that ships. */
  sample: string
  /** What is removed in the end. */
  temporary: string
}

export interface Surroundings {
  platform: NodeJS.Platform
  env: Readonly<Record<string, string | undefined>>
  /** The person's home folder. */
  home: string
}

/**
 * Settings where the system keeps them (XDG Base Directory on Linux, Application Support on macOS, roaming AppData on
 * Windows), jobs in the home folder; `SCANTLING_HOME` puts both below one folder.
 */
export function placesFor({ platform, env, home }: Surroundings): Places {
  const { join, resolve, isAbsolute } = platform === 'win32' ? win32 : posix
  const own = env['SCANTLING_HOME']
  if (own !== undefined && own !== '') {
    return { settings: resolve(own, 'settings'), shelf: resolve(own, 'jobs') }
  }
  const shelf = join(home, 'Scantling')
  if (platform === 'win32') {
    return { settings: join(env['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Scantling'), shelf }
  }
  if (platform === 'darwin') {
    return { settings: join(home, 'Library', 'Application Support', 'Scantling'), shelf }
  }
  // A relative path there is invalid and to be ignored: XDG Base Directory Specification 0.8, "Basics".
  const xdg = env['XDG_CONFIG_HOME']
  const config = xdg !== undefined && isAbsolute(xdg) ? xdg : join(home, '.config')
  return { settings: join(config, 'scantling'), shelf }
}

/**
 * Where a workbench has its things.
 * @param root folder of the program itself, with its samples
 */
export const workbenchPlaces = (places: Places, root: string): WorkbenchPlaces => ({
  ...places,
  sample: join(root, 'samples', 'deck-ventilator'),
  // Not the system's own folder for it: that is often kept in memory, too small for large scans.
  temporary: join(places.settings, 'temporary'),
})
