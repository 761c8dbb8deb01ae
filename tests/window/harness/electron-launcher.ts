import { once } from 'node:events'
import { resolve } from 'node:path'
import { _electron } from 'playwright-core'
import { electronRuntime } from '../../../src/main/launch/electron-runtime.ts'
import { thisMachine } from '../../../src/main/launch/surroundings.ts'
import { watchFaults } from './faults.ts'
import { type Launcher, PLAIN_SIZE } from './launcher.ts'
import type { Opens } from './program.ts'
import { watchToldIds } from './told-ids.ts'

const PROGRAM = resolve(import.meta.dirname, '../../../out/main/electron.js')

const argumentsOf = (opens: Opens): string[] =>
  opens === 'start' ? [] : opens === 'sample' ? ['--sample'] : [opens.folder]

/** The desktop host in Electron; undefined where its runtime is not there. */
export function electronLauncher(): Launcher | undefined {
  const runtime = electronRuntime(thisMachine())
  if (runtime === undefined) return undefined
  return {
    name: 'the desktop window',
    async open({ opens, home, size = PLAIN_SIZE, scheme = 'light' }) {
      const desktop = await _electron.launch({
        executablePath: runtime,
        args: [PROGRAM, ...argumentsOf(opens)],
        env: { ...process.env, SCANTLING_HOME: home } as Record<string, string>,
        colorScheme: scheme,
        locale: 'en-GB',
        timezoneId: 'UTC',
      })
      const page = await desktop.firstWindow()
      const faults = watchFaults(page)
      await watchToldIds(page)
      await desktop.evaluate(({ BrowserWindow }, { width, height }) => {
        BrowserWindow.getAllWindows()[0]?.setContentSize(width, height)
      }, size)
      await page.emulateMedia({ reducedMotion: 'reduce' })
      let killed = false
      const log: string[] = []
      const program = desktop.process()
      program.stderr?.setEncoding('utf8').on('data', (text: string) => log.push(text))
      return {
        page,
        faults,
        log,
        close: async () => {
          if (!killed) await desktop.close()
        },
        kill: async () => {
          killed = true
          faults.forgive()
          program.kill('SIGKILL')
          await once(program, 'exit')
        },
      }
    },
    end: async () => undefined,
  }
}

/** Why the tests drive no desktop window here; undefined when they do. */
export const whyNoDesktop = (): string | undefined =>
  electronRuntime(thisMachine()) === undefined ? 'the Electron runtime is not on this machine' : undefined
