import type { End, LaunchSurroundings, Started } from '../../../src/main/launch/surroundings.ts'

export interface Machine extends LaunchSurroundings {
  /** Every program that was started, with its arguments. */
  started: string[][]
  /** Every address that was tried. */
  tried: string[]
}

export interface MachineIs
  extends Partial<Omit<LaunchSurroundings, 'start' | 'answers' | 'exists' | 'readText'>> {
  /** Files that are there, with their text. */
  files?: Record<string, string>
  /** How a program ends; undefined: it goes on. */
  ends?: (program: string, args: readonly string[]) => Promise<End> | End | undefined
  answers?: (url: string) => boolean
}

/** A machine that is not this one: nothing is read, started or fetched. Waiting takes no time. */
export function machine({ files = {}, ends, answers, ...is }: MachineIs = {}): Machine {
  const started: string[][] = []
  const tried: string[] = []
  return {
    started,
    tried,
    platform: 'linux',
    env: { DISPLAY: ':0', PATH: '/usr/bin' },
    home: '/home/rivet',
    userId: 1000,
    packageFolder: (name) =>
      `/app/node_modules/${name}/package.json` in files ? `/app/node_modules/${name}` : undefined,
    exists: (path) => path in files,
    readText: (path) => files[path],
    answers: async (url) => {
      tried.push(url)
      return answers?.(url) ?? false
    },
    start: (program, args): Started => {
      started.push([program, ...args])
      const end = ends?.(program, args)
      return {
        ended: end === undefined ? new Promise(() => undefined) : Promise.resolve(end),
        stop: () => started.push([program, 'stopped']),
      }
    },
    // A turn of the event loop, so that whatever has ended is seen to have.
    wait: () => new Promise((resolve) => setImmediate(resolve)),
    ...is,
  }
}

export const ELECTRON = '/app/node_modules/electron'

/** The Electron package as npm lays it down, without its runtime. */
export const PACKAGE = { [`${ELECTRON}/package.json`]: '{"version":"45.4.1"}' }

/** The Electron package with its runtime. */
export const RUNTIME = { ...PACKAGE, [`${ELECTRON}/path.txt`]: 'electron', [`${ELECTRON}/dist/electron`]: '' }
