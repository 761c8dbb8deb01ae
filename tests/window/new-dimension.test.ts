import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'
import { oneOf } from './steps.ts'

describe('A dimension without a pick', () => {
  inHost(localLauncher(), (session) => {
    it('is made from the table, a formula with its value under it before Enter, and undone by one step', async () => {
      const { folder } = await workshopJob()
      const dimensions = async () => (await readJobFolder(folder)).job.dimensions
      await session({ opens: { folder } }, async ({ page, person }) => {
        await tableSettled(page)
        await grid(page).focus()
        await person.press('Insert')
        const form = page.getByRole('form', { name: 'New dimension' })
        await form.waitFor()
        await person.write('Hood, height')
        await person.click(oneOf(page, 'What says how large it is', 'By formula'))
        await person.click(person.field('Formula over the names of dimensions'))
        await person.write('drum_length +')
        await form.locator('.draft-verdict-wrong').waitFor()
        await person.write(' 1/4"')
        await expect.poll(() => form.locator('[data-formula-value]').textContent()).toMatch(/= .*6 1\/4"/)
        await person.press('Enter')
        await page.getByRole('article', { name: 'Card of hood_height' }).waitFor()
        expect((await dimensions()).at(-1)).toMatchObject({
          name: 'hood_height',
          label: 'Hood, height',
          evidence: [{ basis: 'derived', formula: 'drum_length + 1/4"' }],
        })

        // Where it stands, too: what it comes to is said before it is kept.
        await tableSettled(page)
        const figure = grid(page).locator('[data-name="hood_height"] [data-column="figure"]')
        await figure.dblclick()
        await person.press('End')
        await person.write(' + 1"')
        await expect.poll(() => figure.locator('[data-formula-value]').textContent()).toMatch(/= .*7 1\/4"/)
        await person.press('Enter')
        await expect
          .poll(async () => (await dimensions()).at(-1)?.evidence)
          .toMatchObject([{ formula: 'drum_length + 1/4" + 1"' }])
        await person.press('Control+z')
        await expect
          .poll(async () => (await dimensions()).at(-1)?.evidence)
          .toMatchObject([{ formula: 'drum_length + 1/4"' }])
        await person.press('Control+z')
        await expect.poll(async () => (await dimensions()).length).toBe(2)

        // By readings alone, one line of them.
        await person.click(person.button('New dimension…'))
        await form.waitFor()
        await person.write('Hood, rim')
        await person.click(oneOf(page, 'What says how large it is', 'Measured'))
        await person.click(person.field('Readings on the original'))
        await person.write('2 1/2 2 33/64')
        await person.press('Enter')
        await page.getByRole('article', { name: 'Card of hood_rim' }).waitFor()
        expect((await dimensions()).at(-1)).toMatchObject({
          name: 'hood_rim',
          evidence: [{ basis: 'found', readings: ['2 1/2', '2 33/64'] }],
        })
      })
    })

    it('is made of a figured size on its own form', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await tableSettled(page)
        await person.station('Scale')
        await person.click(page.locator('.known-sizes-show').first())
        await person.click(person.button('A dimension too'))
        await page.getByRole('form', { name: 'New dimension' }).waitFor()
        await person.write('Drum, between the rims')
        await person.press('Enter')
        await page.getByRole('article', { name: 'Card of drum_between_the_rims' }).waitFor()
        expect((await readJobFolder(folder)).job.dimensions.at(-1)).toMatchObject({
          kind: 'length',
          evidence: [
            { basis: 'printed', text: '12"', sheet: 'S1' },
            { basis: 'scaled', view: 'V1', measure: 'distance', marks: ['M1', 'M2'] },
          ],
        })
      })
    })
  })
})
