import { join } from 'node:path'
import type { LaunchSurroundings } from './surroundings.ts'

const ANSWER_WITHIN = 2000
const DOWNLOAD_WITHIN = 5 * 60 * 1000
const DOWNLOADS = 'https://github.com/electron/electron/releases/download/'

const asked = (value: string | undefined): boolean =>
  value !== undefined && value !== '' && value !== '0' && value !== 'false'

/** Where the runtime is downloaded from: a mirror that a person has set, or its makers' own place. */
function downloads(env: LaunchSurroundings['env']): string {
  const mirror = env['ELECTRON_MIRROR'] ?? env['npm_config_electron_mirror'] ?? ''
  return mirror === '' ? DOWNLOADS : mirror
}

/**
 * Downloads the Electron runtime with the package's own installer, where that can be done: within five minutes, and
 * not at all when its place does not answer within two seconds.
 * @returns undefined when it is there now; else why not, as a part of a sentence
 */
export async function fetchElectron(
  surroundings: LaunchSurroundings,
  say: (sentence: string) => void,
): Promise<string | undefined> {
  const { env, readText } = surroundings
  const folder = surroundings.packageFolder('electron')
  if (folder === undefined) return 'Electron is not installed'
  for (const name of ['SCANTLING_NO_DOWNLOAD', 'CI']) {
    if (asked(env[name])) return `the Electron runtime is not there, and ${name} says not to download it`
  }
  const { version } = JSON.parse(readText(join(folder, 'package.json')) ?? '{}') as { version?: string }
  const place = downloads(env)
  const url = `${place.replace(/\/?$/, '/')}v${version ?? ''}/SHASUMS256.txt`
  if (!URL.canParse(url))
    return `the Electron runtime is not there, and "${place}" is no address to download from`
  if (!(await surroundings.answers(url, ANSWER_WITHIN))) {
    return `the Electron runtime is not there, and ${new URL(url).host} did not offer it within two seconds`
  }
  say('Downloading the Electron runtime, once, for the desktop window; this may take some minutes.')
  const installer = surroundings.start(process.execPath, [join(folder, 'install.js')], true)
  const end = await Promise.race([installer.ended, surroundings.wait(DOWNLOAD_WITHIN)])
  if (end === undefined) {
    installer.stop()
    return 'the download of the Electron runtime took longer than five minutes'
  }
  return end.code === 0 ? undefined : 'the download of the Electron runtime failed'
}
