import type { LaunchSurroundings } from './surroundings.ts'

/**
 * Why no window of any kind can be opened here, as a part of a sentence; undefined when one can be tried. Chromium,
 * which Electron is built on, does not run as root with its sandbox on, and the sandbox stays on.
 */
export function whyNoWindow({ platform, env, userId }: LaunchSurroundings): string | undefined {
  if (platform === 'darwin' || platform === 'win32') return undefined
  const display = env['DISPLAY'] ?? ''
  const wayland = env['WAYLAND_DISPLAY'] ?? ''
  if (display === '' && wayland === '') return 'there is no display here'
  if (userId === 0) return 'browsers do not open a window safely for root'
  return undefined
}
