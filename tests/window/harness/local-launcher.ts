import type { Browser } from 'playwright-core'
import { openBrowser } from './browser.ts'
import { watchFaults } from './faults.ts'
import { type Launcher, PLAIN_SIZE } from './launcher.ts'
import { startProgram } from './program.ts'
import { watchToldIds } from './told-ids.ts'

/** One for all tests of a process, for to begin it takes as long as a short test; it ends with the process. */
let browser: Promise<Browser> | undefined

/** The local host, its page in the packaged headless browser. */
export function localLauncher(): Launcher {
  return {
    name: 'a browser on the local host',
    async open({ opens, home, size = PLAIN_SIZE, scheme = 'light' }) {
      browser ??= openBrowser()
      const program = await startProgram(opens, home)
      const context = await (await browser).newContext({
        viewport: size,
        colorScheme: scheme,
        reducedMotion: 'reduce',
        locale: 'en-GB',
        timezoneId: 'UTC',
      })
      const page = await context.newPage()
      const faults = watchFaults(page)
      await watchToldIds(page)
      await page.goto(program.address)
      let killed = false
      return {
        page,
        faults,
        log: program.log,
        close: async () => {
          await context.close()
          const code = await program.end()
          if (code !== 0 && !killed) {
            throw new Error(`scantling open ended with ${code}: ${program.log.join('\n')}`)
          }
        },
        kill: async () => {
          killed = true
          faults.forgive()
          await program.kill()
        },
      }
    },
    end: async () => {
      const shared = browser
      browser = undefined
      await (await shared)?.close()
    },
  }
}
