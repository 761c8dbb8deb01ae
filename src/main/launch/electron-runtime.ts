import { posix, win32 } from 'node:path'
import type { LaunchSurroundings } from './surroundings.ts'

/**
 * The program of the Electron runtime; undefined when the package or its runtime is not there. The package itself is
 * not asked: its own entry downloads what is missing, for as long as that takes.
 */
export function electronRuntime(surroundings: LaunchSurroundings): string | undefined {
  const { platform, env, exists, readText } = surroundings
  const { join } = platform === 'win32' ? win32 : posix
  const folder = surroundings.packageFolder('electron')
  if (folder === undefined) return undefined
  const program = readText(join(folder, 'path.txt'))?.trim() ?? ''
  if (program === '') return undefined
  const path = join(env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(folder, 'dist'), program)
  return exists(path) ? path : undefined
}
