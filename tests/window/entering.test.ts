import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { withJob } from '../main/fixtures/history-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inEachHost, inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { grid } from './harness/table-in-window.ts'
import { openCard, sheetReady, workAs } from './steps.ts'

/** Holds every edit on its way; what comes back lets so many of them go on, by and by. */
async function holdEdits(page: Page): Promise<(howMany: number) => void> {
  let free = 0
  await page.route('**/ask/edit', async (route) => {
    while (free === 0) await new Promise((resolve) => setTimeout(resolve, 20))
    free--
    await route.continue()
  })
  return (howMany) => {
    free += howMany
  }
}

const saved = (page: Page): Locator => page.locator('[data-saved]')

/** Writes in place of what is in the field that has the keyboard, and presses Enter. */
async function enter(person: Person, text: string): Promise<void> {
  await person.press('Control+a')
  await person.write(text)
  await person.press('Enter')
}

async function allSaved(page: Page): Promise<void> {
  await expect.poll(() => saved(page).textContent(), { timeout: 15_000 }).toMatch(/^Saved \d/)
}

describe('What is entered while an earlier entry is on its way', () => {
  inHost(localLauncher(), (session) => {
    it('is kept after it, not said to be saved before, and holds the job open until it is kept', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        const opened = await openCard(person, 'drum_length')
        const letGo = await holdEdits(page)
        const label = opened.getByRole('textbox', { name: 'What it is' })
        await person.click(label)
        await enter(person, 'Collar, bore')
        await enter(person, 'Collar, outside')
        await enter(person, 'Collar, outside')
        expect(await saved(page).textContent()).toBe('Saving…')
        letGo(1)
        await grid(page).getByText('Collar, bore', { exact: true }).waitFor()
        expect(await saved(page).textContent()).toBe('Saving…')
        expect(await label.inputValue()).toBe('Collar, outside')
        letGo(1)
        await grid(page).getByText('Collar, outside', { exact: true }).waitFor()
        await allSaved(page)
        expect((await readJobFolder(folder)).job).toMatchObject({ edition: 2 })

        await enter(person, 'Collar, inside')
        await enter(person, 'Collar, outside')
        letGo(2)
        await allSaved(page)
        expect((await readJobFolder(folder)).job).toMatchObject({
          edition: 4,
          dimensions: [{ label: 'Collar, outside' }, {}],
        })

        // Also where the first gives the dimension another name, and as fields of one record.
        await person.click(opened.getByRole('textbox', { name: 'Name in formulas' }))
        await enter(person, 'collar')
        await enter(person, 'collar_bore')
        await person.press('Tab')
        await enter(person, '3')
        letGo(3)
        await allSaved(page)
        expect((await readJobFolder(folder)).job.dimensions[0]).toMatchObject({
          name: 'collar_bore',
          count: 3,
        })
        expect(await page.getByRole('region', { name: 'Notices' }).textContent()).toBe('')

        await person.station('Sheet')
        await person.click(page.getByRole('textbox', { name: 'Drawing number' }))
        await enter(person, '1172')
        await person.press('Tab')
        await enter(person, 'J. Weld')
        letGo(2)
        await allSaved(page)
        expect((await readJobFolder(folder)).job.sheets[0]?.record).toEqual({
          identifier: '1172',
          creator: 'J. Weld',
        })

        // It is kept before the job is closed, and asked about before the page is left.
        // A picture that is still on its way when its job is closed would be refused.
        await sheetReady(page)
        const again = await openCard(person, 'collar_bore')
        await person.click(again.getByRole('textbox', { name: 'What it is' }))
        await enter(person, 'Collar, bore')
        await person.press('Control+a')
        await person.write('Collar, within')
        const asked = page.waitForEvent('dialog')
        await page.close({ runBeforeUnload: true })
        expect((await asked).type()).toBe('beforeunload')
        await (await asked).dismiss()
        await person.click(person.button('Close this job'))
        letGo(2)
        await person.button('Close this job').waitFor({ state: 'detached' })
        expect((await readJobFolder(folder)).job.dimensions[0]).toMatchObject({ label: 'Collar, within' })

        // And what can not be kept holds the job open once, with a word.
        await page.unrouteAll({ behavior: 'wait' })
        await person.click(person.button(/^Drum of the chain ferry/))
        await sheetReady(page)
        const once = await openCard(person, 'collar_bore')
        await person.fill(once.getByRole('textbox', { name: 'Tolerance' }), 'rather close')
        await person.click(person.button('Close this job'))
        await page.getByText(/^Caution: Not closed, for something that was written is not kept yet/).waitFor()
        await person.click(person.button('Close this job'))
        await person.button('Close this job').waitFor({ state: 'detached' })
      })
    })
  })
})

describe('Undo by the keyboard', () => {
  inEachHost((session) => {
    it('takes the edit back from what a note is about, which does not open by itself', async () => {
      const note = { id: 'N1', sheet: 'S1', outline: [], text: 'Worn on the left.' }
      const { folder } = await workshopJob((job) => ({ ...job, notes: [note] }))
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.station('Sheet')
        await person.click(person.button(/^Notes \(1\)$/))
        await person.click(page.getByRole('list', { name: 'Notes' }).getByRole('button').first())
        const text = page.getByRole('article', { name: 'Note 1' }).getByRole('textbox', { name: 'Text' })
        await person.fill(text, 'Ada wrote this')
        await person.press('Tab')
        const about = page.getByRole('combobox', { name: 'About' })
        await expect.poll(() => about.evaluate((field) => field === document.activeElement)).toBe(true)
        await allSaved(page)
        expect(await page.getByRole('listbox').count()).toBe(0)
        await person.press('Control+z')
        await expect.poll(() => text.inputValue()).toBe('Worn on the left.')
        await person.press('Control+Shift+z')
        await expect.poll(() => text.inputValue()).toBe('Ada wrote this')

        // In a field that shows what is kept it is the job's too; in what is being written, that of the letters.
        await person.press('Shift+Tab')
        await person.press('Control+z')
        await expect.poll(() => text.inputValue()).toBe('Worn on the left.')
        await person.press('End')
        await person.press('Control+End')
        await person.write(' Much.')
        await person.press('Control+z')
        expect(await text.inputValue()).not.toBe('Worn on the left. Much.')
        expect((await readJobFolder(folder)).job.notes[0]?.text).toBe('Worn on the left.')
      })
    })
  })
})

describe('Many steps back at once', () => {
  inEachHost((session) => {
    it("end at somebody else's edit, with one question", async () => {
      const { folder } = await workshopJob()
      await withJob(folder, (made) => made.edit({ do: 'describe', set: { title: 'Drum, theirs' } }, 'AR'))
      await session({ opens: { folder } }, async ({ page, person }) => {
        await workAs(person, 'Eve')
        const opened = await openCard(person, 'drum_length')
        await person.click(opened.getByRole('textbox', { name: 'What it is' }))
        for (const label of ['Collar', 'Collar, bore', 'Collar, outside']) await enter(person, label)
        await allSaved(page)
        await page.evaluate(() => {
          for (let k = 0; k < 20; k++) {
            const how = { key: 'z', code: 'KeyZ', ctrlKey: true, bubbles: true, cancelable: true }
            document.body.dispatchEvent(new KeyboardEvent('keydown', how))
          }
        })
        const asks = page.getByRole('dialog', { name: 'Undo what somebody else did?' })
        await asks.getByText(/A. Rivet/).waitFor()
        await person.press('Escape')
        await asks.waitFor({ state: 'detached' })
        await page.getByRole('heading', { name: 'Drum, theirs' }).waitFor()
        expect(await opened.getByRole('textbox', { name: 'What it is' }).inputValue()).toBe('Drum, length')
        expect(await page.getByRole('region', { name: 'Notices' }).textContent()).toBe('')
      })
    })
  })
})

describe('The form for evidence, and that of a note', () => {
  inEachHost((session) => {
    it('is left by Escape from wherever the keyboard is in it, but for a list that is open; and keeps a card waiting', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        const opened = await openCard(person, 'drum_length')
        const add = opened.getByRole('button', { name: 'Add evidence' })
        await add.press('Enter')
        await opened.getByRole('radio', { name: 'Printed' }).focus()
        await person.press('ArrowRight')
        await person.press('Escape')
        await add.waitFor()

        await add.press('Enter')
        const instrument = opened.getByRole('button', { name: /Instrument/ })
        await instrument.press('Enter')
        await page.getByRole('listbox').waitFor()
        await person.press('Escape')
        await page.getByRole('listbox').waitFor({ state: 'detached' })
        await expect.poll(() => instrument.evaluate((one) => one === document.activeElement)).toBe(true)
        await person.press('Escape')
        await add.waitFor()

        // A note that is being written keeps the card of what is chosen waiting, which is said whenever it is chosen.
        await person.click(person.button('Back to Sheet'))
        await person.click(person.button(/^Notes/))
        await person.click(person.button('Write a note'))
        await person.click(page.getByRole('button', { name: 'The whole sheet', exact: true }))
        await page.getByRole('form', { name: 'Note' }).waitFor()
        const told = page.getByText(/^Note: The card of drum_length is shown once/)
        for (let k = 0; k < 2; k++) {
          await person.click(grid(page).getByText('drum_length', { exact: true }))
          await told.waitFor()
          await person.click(person.button('Dismiss this notice'))
          await told.waitFor({ state: 'detached' })
        }
      })
    })
  })
})
