import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'

const cellOf = ({ page }: Person, name: string, column: string) =>
  grid(page).locator(`[data-name="${name}"] [data-column="${column}"]`)

/** Waits until what was entered is on disk, and shown. */
async function allKept(page: Page): Promise<void> {
  await expect
    .poll(() => page.locator('[data-saved]').textContent(), { timeout: 15_000 })
    .toMatch(/^Saved \d/)
  await tableSettled(page)
}

describe('Readings of the original in the table', () => {
  inHost(localLauncher(), (session) => {
    it('are entered down the column by an instrument that is defined there, each undone by one step', async () => {
      const { folder } = await workshopJob()
      const found = async (name: string) =>
        (await readJobFolder(folder)).job.dimensions
          .find((one) => one.name === name)
          ?.evidence.filter(({ basis }) => basis === 'found')
      await session({ opens: { folder } }, async ({ page, person }) => {
        await tableSettled(page)
        await person.click(person.button('no instrument named, change the instrument'))
        await person.click(person.button('New instrument…'))
        await person.write('6 in dial caliper')
        await person.press('Tab')
        await person.write('0.001 in')
        await person.press('Tab')
        await person.write('0.002 in')
        await person.press('Enter')
        await person.button('by 6 in dial caliper, change the instrument').waitFor()
        const [instrument] = (await readJobFolder(folder)).job.instruments
        expect(instrument).toMatchObject({
          name: '6 in dial caliper',
          resolution: '0.001 in',
          limit: '0.002 in',
        })

        await cellOf(person, 'drum_length', 'original').dblclick()
        await person.write('6.01 6,02 6 1/64')
        await grid(page).getByText('3 readings, mean 6.015" ±', { exact: false }).first().waitFor()
        await person.press('Enter')
        await person.write('3.01 30.1')
        await grid(page).getByText("can't both be readings of one size", { exact: false }).waitFor()
        await person.press('Control+a')
        await person.write('3.01')
        await person.press('Tab')
        await page.getByRole('textbox', { name: 'no. of drum_half' }).waitFor()
        await person.press('Escape')
        await allKept(page)
        expect(await found('drum_length')).toMatchObject([
          { readings: ['6.01', '6,02', '6 1/64'], instrument: instrument?.id },
        ])
        expect(await found('drum_half')).toMatchObject([{ readings: ['3.01'], instrument: instrument?.id }])
        expect(await cellOf(person, 'drum_length', 'original').textContent()).toMatch(/6\.015.* ± .*of 3$/)

        // What is written again replaces it, what is emptied is withdrawn.
        await cellOf(person, 'drum_length', 'original').dblclick()
        await person.press('Control+a')
        await person.write('6.02')
        await person.press('Enter')
        await person.press('Escape')
        await allKept(page)
        expect(await found('drum_length')).toMatchObject([{ readings: ['6.02'] }])
        await person.press('ArrowUp')
        await person.press('F2')
        await person.press('Delete')
        await person.press('Enter')
        await person.press('Escape')
        await allKept(page)
        expect(await cellOf(person, 'drum_length', 'original').textContent()).toBe('')
        expect(await found('drum_length')).toMatchObject([{ withdrawn: expect.any(String) }])
        for (let step = 0; step < 3; step++) {
          await person.press('Control+z')
          await allKept(page)
        }
        expect(await found('drum_length')).toMatchObject([{ readings: ['6.01', '6,02', '6 1/64'] }])
        expect(await found('drum_half')).toEqual([])

        // What is typed on a cell begins a new line of readings.
        await cellOf(person, 'drum_half', 'original').click()
        await grid(page).focus()
        await person.write('3.02 3.03')
        await person.press('Enter')
        await allKept(page)
        expect(await found('drum_half')).toMatchObject([{ readings: ['3.02', '3.03'] }])
      })
    })
  })
})
