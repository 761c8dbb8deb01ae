import type { Locator } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { labelOf } from '../../src/core/job/ids/label.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { withJob } from '../main/fixtures/history-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inEachHost, inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'
import { desk, openCard, pickPunch, sheetReady, workAs } from './steps.ts'

/** Whether the keyboard is somewhere in a part of the window, as soon as it has come to rest. */
async function expectKeyboardIn(part: Locator): Promise<void> {
  await expect.poll(() => part.evaluate((element) => element.contains(document.activeElement))).toBe(true)
}

describe('The keyboard stays near', () => {
  inEachHost((session) => {
    it("when a figured size is taken away, or a form or card left; undo then takes that back, and asks before it takes somebody else's", async () => {
      const { folder } = await workshopJob()
      await withJob(folder, (made) => made.edit({ do: 'describe', set: { title: 'Drum, theirs' } }, 'AR'))
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await workAs(person, 'Eve')
        await person.station('Scale')
        await page.getByRole('button', { name: /^Remove the figured size 8"/ }).press('Enter')
        await page.getByRole('button', { name: /^Remove the figured size 8"/ }).waitFor({ state: 'detached' })
        await expectKeyboardIn(desk(page))

        await person.press('Control+z')
        await page.getByRole('button', { name: /^Remove the figured size 8"/ }).waitFor()
        await person.press('Control+z')
        const asks = page.getByRole('dialog', { name: 'Undo what somebody else did?' })
        await asks.getByText(/A. Rivet.*that it was made, and that you took it back/).waitFor()
        await person.press('Escape')
        await asks.waitFor({ state: 'detached' })
        await page.getByRole('heading', { name: 'Drum, theirs' }).waitFor()
        await person.press('Control+z')
        await asks.getByRole('button', { name: 'Undo theirs' }).press('Enter')
        await page.getByRole('heading', { name: 'Drum of the chain ferry' }).waitFor()

        // Also when a form is left, evidence is withdrawn and a card is put away.
        const opened = await openCard(person, 'drum_length')

        await opened.getByRole('button', { name: 'Add evidence' }).press('Enter')
        await person.press('Escape')
        await opened.getByRole('button', { name: 'Add evidence' }).waitFor()
        await expectKeyboardIn(opened.getByRole('region', { name: 'More evidence' }))

        const piece = opened.getByRole('region', { name: /^Evidence s1/ })
        await piece.getByRole('button', { name: /^Withdraw/ }).press('Enter')
        await person.write('Picked on a fold.')
        await person.press('Enter')
        await piece.getByRole('button', { name: /^Reinstate/ }).waitFor()
        await expectKeyboardIn(piece)
        await piece.getByText(/^Withdrawn by /).waitFor()
        await opened.getByRole('button', { name: 'History', exact: true }).press('Enter')
        await opened.getByText('withdrew evidence s1 of drum_length: Picked on a fold.').waitFor()
        expect(await opened.locator('.history-section li').count()).toBe(1)

        await page.getByRole('button', { name: /^Back to/ }).press('Enter')
        await opened.waitFor({ state: 'detached' })
        await expectKeyboardIn(desk(page))
      })
    })
  })
})

describe('What was written is kept', () => {
  inEachHost((session) => {
    it('once, however often Enter is pressed, and when somebody goes to another station', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await workAs(person, 'Eve')
        const opened = await openCard(person, 'drum_length')
        await person.fill(opened.getByRole('textbox', { name: 'Note' }), 'Worn at one end.')
        await person.fill(opened.getByRole('textbox', { name: 'What it is' }), 'Length of the drum')
        await person.press('Enter')
        await person.press('Enter')
        await person.press('Tab')
        await tableSettled(page)

        await person.click(opened.getByRole('button', { name: 'Add evidence' }))
        await person.write('6 1/16"')
        await person.press('Enter')
        await person.press('Enter')
        await opened.getByRole('region', { name: /^Printed 2/ }).waitFor()
        await tableSettled(page)
        const { job } = await readJobFolder(folder)
        expect(job.dimensions[0]).toMatchObject({ label: 'Length of the drum', note: 'Worn at one end.' })
        expect(job.dimensions[0]?.evidence.map(labelOf)).toEqual(['p1', 's1', 'printed 2'])
        // With whoever is at work, who joins the people of the job with the evidence.
        expect(job.edition).toBe(4)

        // Also when somebody goes to another station in the middle of it.
        await person.fill(opened.getByRole('textbox', { name: 'What it is' }), 'Drum, how long')
        await person.press('Alt+2')
        await opened.waitFor({ state: 'detached' })
        await page.getByRole('region', { name: 'Views on this sheet' }).waitFor()
        await grid(page).getByText('Drum, how long', { exact: true }).waitFor()
      })
    })
  })

  inHost(localLauncher(), (session) => {
    it('in its field and in its cell when the workbench no longer answers', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person, window }) => {
        const opened = await openCard(person, 'drum_length')
        await window.kill()
        const label = opened.getByRole('textbox', { name: 'What it is' })
        await person.fill(label, 'Length of the drum')
        await person.press('Enter')
        await opened.getByText('Not kept yet: Enter tries again').waitFor()
        await expect(label.inputValue()).resolves.toBe('Length of the drum')

        await grid(page).getByText('Drum, half its length', { exact: true }).dblclick()
        await person.write('Half a drum')
        await person.press('Enter')
        const cell = grid(page).getByRole('textbox')
        await cell.waitFor()
        await expect.poll(() => cell.inputValue()).toBe('Half a drum')
      })
    })
  })
})

describe('An outline', () => {
  inEachHost((session) => {
    it('of a view is drawn again, and nothing else of the view changes', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        const before = (await readJobFolder(folder)).job.views
        await person.station('Scale')
        await person.click(person.button('This view'))
        await person.click(person.button('Draw its outline'))
        await pickPunch(person, 'origin')
        await person.press('w')
        await pickPunch(person, 'far')
        await page.getByRole('form', { name: 'New outline' }).waitFor()
        await person.press('Enter')
        await page.getByRole('form', { name: 'New outline' }).waitFor({ state: 'detached' })
        await page.getByText(/^Saved \d\d:\d\d$/).waitFor()
        const [view, ...others] = (await readJobFolder(folder)).job.views
        const { outline, ...rest } = view ?? {}
        expect(outline).toHaveLength(4)
        expect([rest, ...others]).toEqual(before)
      })
    })
  })
})
