import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { mintedFor } from '../../src/core/job/ids/id-form.ts'
import { labelOf } from '../../src/core/job/ids/label.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { punchAt, trueDistance } from './fixtures/plate.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { boxOf } from './harness/box-of.ts'
import type { Person } from './harness/person.ts'
import { closeUp, wholeSheet } from './harness/sheet-hand.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'
import { desk, knownSize, newDistance, sheetReady } from './steps.ts'

const told = (page: Page, words: string | RegExp) => desk(page).getByText(words).first().waitFor()

/** The name of the edit that undo takes back, as its hint says it. */
async function undoHint(person: Person): Promise<string> {
  const { page } = person
  const { x, y } = await boxOf(person.button(/^Undo /))
  await page.mouse.move(x + 20, y + 60)
  await page.mouse.move(x + 20, y + 10, { steps: 5 })
  const hint = page.getByRole('tooltip')
  await hint.waitFor()
  const text = (await hint.textContent()) ?? ''
  await page.mouse.move(0, 0)
  await hint.waitFor({ state: 'detached' })
  return text
}

/** Whatever else is told of an id that was given, the harness takes for a fault of the window. */
describe('What is added in a window', () => {
  inEachHost((session) => {
    it('is called by its kind and number on the desk, the card and the lens, and by undo', async () => {
      const folder = await plateJob()
      const size = trueDistance('near', 'far')
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.station('Scale')
        await knownSize(person, ['near', 'far'], `${size} mm`)
        expect(await undoHint(person)).toBe('Undo add figured size 3 to view “Plan” (Ctrl+Z)')
        await person.button(/^Remove the figured size 216/).waitFor()

        await person.station('Pick')
        await newDistance(person, ['near', 'far'], 'Between the inner punches', ['near', 'far'])
        await tableSettled(page)
        await person.click(grid(page).getByText('between_the_inner_punches', { exact: true }))
        await told(page, 'distance between point 4, point 5 in view “Plan”')
        const card = page.getByRole('article', { name: 'Card of between_the_inner_punches' })
        await card.getByRole('region', { name: 'Scaled 1, scaled' }).waitFor()
        await person.click(card.getByRole('button', { name: 'Add evidence' }))
        await person.write('217 mm')
        await person.press('Enter')
        await card.getByRole('region', { name: /^Printed 1, printed/ }).waitFor()
        await person.click(card.getByRole('button', { name: 'History' }))
        await told(page, /picked point 4/)
        await told(page, /picked point 5/)
        expect(await undoHint(person)).toBe('Undo add printed 1 to between_the_inner_punches (Ctrl+Z)')

        await person.click(person.button(/^Back to/))
        await wholeSheet(page)
        const near = await closeUp(page, punchAt('near'), 12)
        await page.mouse.move(...near)
        await page.locator('.lens-words').getByText('point 4').waitFor()
        await person.press('Escape')
        await person.clickAt(near)
        await told(page, 'Point 4')
        await told(page, 'Figured size 3 in “Plan”')

        const { job } = await readJobFolder(folder)
        const marks = job.marks.slice(3)
        expect(marks.map(labelOf)).toEqual(['point 4', 'point 5'])
        expect(marks.map(({ id }) => mintedFor(id))).toEqual(['mark', 'mark'])
      })
    })
  })
})
