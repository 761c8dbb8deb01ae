import type { LocalHost } from '../local/serve.ts'
import type { Browser } from './browsers.ts'
import type { LaunchSurroundings } from './surroundings.ts'

const OPENS_WITHIN = 20_000
const LOOK_EVERY = 100

/**
 * Opens an application window of a browser on the local host, and waits until it is there.
 * @returns undefined when it is, or nothing is there to be opened any more; else what went wrong, as a part of a sentence
 */
export async function openBrowserWindow(
  { name, program, profile }: Browser,
  host: Pick<LocalHost, 'newAddress' | 'hasWindow' | 'ended'>,
  surroundings: LaunchSurroundings,
): Promise<string | undefined> {
  const args = [
    `--app=${host.newAddress()}`,
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
    // Nothing is kept that a key-ring would be asked for.
    '--password-store=basic',
    '--window-size=1440,900',
  ]
  const started = surroundings.start(program, args, false)
  let problem: string | undefined
  // One that runs already takes the window over, and the one started here ends well at once.
  void started.ended.then(({ code, problem: what }) => {
    if (code !== 0) problem = `${name} ended at once (${what ?? `exit code ${code}`})`
  })
  let over = false
  const end = (): void => {
    over = true
  }
  host.ended.then(end, end)
  for (let waited = 0; waited < OPENS_WITHIN; waited += LOOK_EVERY) {
    if (over || host.hasWindow()) return undefined
    if (problem !== undefined) return problem
    await surroundings.wait(LOOK_EVERY)
  }
  return `${name} showed no window within ${OPENS_WITHIN / 1000} seconds`
}
