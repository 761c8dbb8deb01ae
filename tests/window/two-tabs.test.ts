import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { Person } from './harness/person.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'
import { desk } from './steps.ts'

/** A second tab on the same job. */
async function secondTab(page: Page): Promise<Person> {
  const second = await page.context().newPage()
  await second.goto(page.url())
  await tableSettled(second)
  return new Person(second)
}

/** Begins to write in the name of the row. */
async function writeInName(person: Person, name: string, text: string) {
  await person.page.bringToFront()
  const cell = grid(person.page).getByText(name, { exact: true })
  await cell.dblclick()
  const field = person.page.getByRole('textbox', { name: /^name of / })
  await field.waitFor()
  await person.press('Control+a')
  await person.write(text)
  return field
}

describe('Two tabs on one job', () => {
  inHost(localLauncher(), (session) => {
    it('leave a half-written cell or field as it is, say that it was changed elsewhere, and Enter decides', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await tableSettled(page)
        const there = await secondTab(page)
        await writeInName(person, 'drum_length', 'drum_over_all')
        await writeInName(there, 'drum_length', 'drum_long')
        await there.press('Enter')
        await grid(there.page).getByText('drum_long', { exact: true }).waitFor()
        await page.bringToFront()
        const field = page.getByRole('textbox', { name: /^name of drum_long/ })
        await page.getByRole('alert').getByText('Changed elsewhere to “drum_long” meanwhile').waitFor()
        expect(await field.inputValue()).toBe('drum_over_all')
        await field.press('Enter')
        await grid(there.page).getByText('drum_over_all', { exact: true }).waitFor()
        expect((await readJobFolder(folder)).job.dimensions.map(({ name }) => name)).toContain(
          'drum_over_all',
        )

        // Leaving a field keeps nothing over what was written elsewhere.
        for (const one of [there, person]) {
          await one.page.bringToFront()
          await one.station('Sheet')
        }
        const title = (one: Person) => desk(one.page).getByRole('textbox', { name: 'Title' })
        await page.bringToFront()
        await person.fill(title(person), 'Hood, mine')
        await there.page.bringToFront()
        await there.fill(title(there), 'Hood, theirs')
        await there.press('Enter')
        await page.bringToFront()
        await desk(page).getByText('Changed elsewhere to “Hood, theirs” meanwhile').waitFor()
        await person.press('Tab')
        expect((await readJobFolder(folder)).job.sheets[0]?.title).toBe('Hood, theirs')
        await person.click(title(person))
        await person.press('Enter')
        await expect
          .poll(async () => (await readJobFolder(folder)).job.sheets[0]?.title, { timeout: 15_000 })
          .toBe('Hood, mine')
        await there.page.close()
      })
    })
  })
})

describe('A history that is open', () => {
  inHost(localLauncher(), (session) => {
    it('goes on by itself, with what another tab does and with what somebody else does who has the job', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await tableSettled(page)
        await session({ opens: { folder } }, async ({ page: onlooker, person: looker }) => {
          for (const [one, on] of [
            [person, page],
            [looker, onlooker],
          ] as const) {
            await one.click(desk(on).getByRole('button', { name: 'History', exact: true }))
            await desk(on).getByText('Reading the history…').waitFor({ state: 'detached' })
          }
          const there = await secondTab(page)
          await there.fill(desk(there.page).getByRole('textbox', { name: 'Title' }), 'Flange')
          await there.press('Enter')
          for (const on of [page, onlooker])
            await desk(on)
              .locator('.history-section')
              .getByText(/“Flange”/)
              .waitFor()
          await there.page.close()

          // That somebody else has the job is said once, however often it is looked at again.
          await onlooker.locator('.frame-banners [data-read-only]').waitFor()
          for (let k = 0; k < 2; k++) {
            await looker.click(looker.button('Look again'))
            await expect.poll(() => looker.button('Look again').isEnabled()).toBe(true)
          }
          expect(await onlooker.getByRole('region', { name: 'Notices' }).textContent()).toBe('')
        })
      })
    })
  })
})

describe('A host that is away for a while', () => {
  inHost(localLauncher(), (session) => {
    it('is said to be so, nothing is shown as saved meanwhile, and all that goes when it answers again', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person, window }) => {
        await tableSettled(page)
        await page.context().route('**/ask/**', (route) => route.abort())
        await page.context().route('**/events', (route) => route.abort())
        window.faults.forgive()
        const title = desk(page).getByRole('textbox', { name: 'Title' })
        await person.fill(title, 'Cone')
        await person.press('Enter')
        await page.getByText(/^The workbench no longer answers\. Everything up to/).waitFor()
        await page.locator('[data-saved]', { hasText: 'Nothing is saved now' }).waitFor()
        expect(await title.inputValue()).toBe('Cone')
        await page.context().unroute('**/ask/**')
        await page.context().unroute('**/events')
        await person.press('Enter')
        await page.locator('[data-saved]', { hasText: /^Saved/ }).waitFor()
        await page
          .getByText(/workbench no longer answers/)
          .first()
          .waitFor({ state: 'detached' })
        expect((await readJobFolder(folder)).job.sheets[0]?.title).toBe('Cone')
      })
    })
  })
})
