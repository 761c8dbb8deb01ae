import { readFile } from 'node:fs/promises'
import { userInfo } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { lookAtLock } from '../../src/main/services/job-folder/lock/look-at-lock.ts'
import { historyFile, lockFile } from '../../src/main/services/job-layout/job-layout.ts'
import { KeptPerson } from '../../src/main/services/people/kept-person.ts'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inEachHost, inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { violations } from './harness/violations.ts'
import { atWork, openCard, workAs } from './steps.ts'

describe('Whoever is at work', () => {
  inEachHost((session) => {
    it('is asked before the first change where nobody knows, and never called by the login', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder }, isStranger: true }, async ({ page, person }) => {
        await person.button('Who is at work?').waitFor()
        const opened = await openCard(person, 'drum_length')
        await person.click(opened.getByRole('button', { name: 'Add evidence' }))
        await person.write('217 mm')
        await person.press('Enter')
        const asked = page.getByRole('dialog', { name: 'Who is at work?' })
        await asked.waitFor()
        expect(await readFile(historyFile(folder), 'utf8')).not.toContain('217 mm')
        expect(await violations(page, 'who is at work')).toEqual([])
        await person.click(asked.getByRole('button', { name: 'Cancel' }))
        expect(await opened.getByRole('textbox').first().inputValue()).toBe('217 mm')
        await person.press('Enter')
        await asked.waitFor()
        await person.write('B. Brass')
        await person.press('Enter')
        await opened.getByRole('region', { name: /^Printed 2/ }).waitFor()
        expect(await readFile(historyFile(folder), 'utf8')).toContain('B. Brass')
        await atWork(person, 'B. Brass').waitFor()
        expect(await page.getByText(userInfo().username, { exact: true }).count()).toBe(0)
      })
    })

    it('is still so when the window is loaded again, and when the program is begun again, in another job too', async () => {
      const [one, other] = [await workshopJob(), await workshopJob()]
      const home = await temporaryFolder()
      await session({ opens: { folder: one.folder }, home }, async ({ page, person }) => {
        await workAs(person, 'Eve')
        await expect
          .poll(() => new KeptPerson(join(home, 'settings')).name(), { timeout: 15_000 })
          .toBe('Eve')
        await page.reload()
        await atWork(person, 'Eve').waitFor()
      })
      await session({ opens: { folder: other.folder }, home }, ({ person }) =>
        atWork(person, 'Eve').waitFor(),
      )
    })
  })

  inHost(localLauncher(), (session) => {
    it('is named to whoever opens the job meanwhile, also once they changed', async () => {
      const { folder } = await workshopJob()
      const home = await temporaryFolder()
      await session({ opens: { folder }, home }, async ({ person: there }) => {
        await workAs(there, 'Eve Archivist-of-the-Long-Name')
        await expect
          .poll(
            async () => {
              const lock = await lookAtLock(lockFile(folder))
              return lock.kind === 'held' ? lock.holder.person : undefined
            },
            { timeout: 15_000 },
          )
          .toBe('Eve Archivist-of-the-Long-Name')
        await session({ opens: { folder } }, async ({ page }) => {
          await page.locator('.frame-banners', { hasText: 'by Eve Archivist-of-the-Long-Name on' }).waitFor()
        })
      })
    })
  })
})
