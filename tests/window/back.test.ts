import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { openCard } from './steps.ts'

/** Keeps what the page tells its host as it goes, for that is not seen from outside. */
async function keepTold(page: Page): Promise<void> {
  await page.context().addInitScript(() => {
    const send = navigator.sendBeacon.bind(navigator)
    navigator.sendBeacon = (url) => {
      localStorage.setItem('told', `${localStorage.getItem('told') ?? ''}${String(url)} `)
      return send(url)
    }
  })
  await page.reload()
  await page.getByRole('heading', { level: 1 }).waitFor()
  await page.evaluate(() => localStorage.removeItem('told'))
}

const told = (page: Page): Promise<string | null> => page.evaluate(() => localStorage.getItem('told'))

describe('Back in the browser', () => {
  inHost(localLauncher(), (session) => {
    it('leads nowhere, loses nothing that is half written, and tells the host nothing; where it leads elsewhere all the same, the host is told', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person, window: open }) => {
        await keepTold(page)
        const opened = await openCard(person, 'drum_length')
        await person.click(opened.getByRole('button', { name: 'Add evidence' }))
        await person.write('217 m')
        for (let k = 0; k < 3; k++) {
          // Down, and up again by itself.
          await page.evaluate(async () => {
            const went = () =>
              new Promise<void>((then) => window.addEventListener('popstate', () => then(), { once: true }))
            history.back()
            await went()
            await went()
          })
        }
        await person.write('m')
        await person.press('Enter')
        await opened.getByRole('region', { name: /^Printed 2/ }).waitFor()
        expect(await told(page)).toBeNull()

        // Another page that is closed tells it nothing either, and one that is led elsewhere all the same does.
        const second = await page.context().newPage()
        await second.goto(page.url())
        await second.getByRole('heading', { level: 1 }).waitFor()
        await second.close({ runBeforeUnload: true })
        expect(await told(page)).toBeNull()
        await page.goto('about:blank')
        await page.goBack()
        await page.getByRole('heading', { level: 1 }).waitFor()
        expect(await told(page)).toBe('/left ')
        expect(open.log).toEqual([])
      })
    })
  })
})
