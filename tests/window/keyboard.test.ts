import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../src/core/job/model/types.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { drawPlate, type Punch, punchAt, STATED_SCALE, trueDistance } from './fixtures/plate.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { overwrite, pickByCross, pressBy, tabTo, toPart, withoutMouse } from './harness/by-keyboard.ts'
import type { Person } from './harness/person.ts'
import { commandRows } from './harness/table-by-command.ts'
import { grid, type ShownRow, tableSettled } from './harness/table-in-window.ts'
import { desk, onSheet, sheetReady } from './steps.ts'

const LABEL = 'Between the inner punches'

const radio = (page: Page, group: string, name: string): Locator =>
  page.getByRole('radiogroup', { name: group }).getByRole('radio', { name })

async function keep(person: Person, form: string, words: readonly string[]): Promise<void> {
  const { page } = person
  await page.getByRole('form', { name: form }).waitFor()
  for (const [k, word] of words.entries()) {
    if (k > 0) await person.press('Tab')
    await person.write(word)
  }
  await person.press('Enter')
  await page.getByRole('form', { name: form }).waitFor({ state: 'detached' })
}

/** By the two fields on the desk instead of the cross. */
async function pickByNumbers(person: Person, [x, y]: readonly [number, number]): Promise<void> {
  const { page } = person
  await toPart(person, desk(page))
  await tabTo(person, desk(page).getByLabel('x', { exact: true }))
  await overwrite(person, x.toFixed(1))
  await person.press('Tab')
  await overwrite(person, y.toFixed(1))
  await pressBy(person, person.button('Pick here'))
}

/** The row that the keyboard is in, cell by cell. */
async function readRow(person: Person): Promise<ShownRow> {
  const { page } = person
  const headings = await grid(page).getByRole('columnheader').allTextContents()
  const row: ShownRow = {}
  await person.press('Home')
  for (const heading of headings) {
    row[heading] = await grid(page).evaluate((element) => {
      const cell = document.getElementById(element.getAttribute('aria-activedescendant') ?? '')
      const copy = cell?.cloneNode(true) as Element
      for (const hidden of copy.querySelectorAll('[aria-hidden="true"]')) hidden.remove()
      return (copy.textContent ?? '').trim()
    })
    await person.press('ArrowRight')
  }
  // The command line has no column of the readings on the original.
  for (const heading of headings.filter((one) => one.startsWith('original'))) delete row[heading]
  return row
}

const pickedPixels = ({ marks }: Job): (readonly [number, number])[] =>
  marks.flatMap((mark) => (mark.kind === 'point' ? [mark.pixel] : []))

describe('Somebody who uses the keyboard alone', () => {
  inEachHost((session) => {
    it('measures a plate from an empty start', async () => {
      await session({ opens: 'start' }, async ({ page, person, home }) => {
        withoutMouse(page)
        const scan = await drawPlate(join(home, 'foundation-plate.png'))
        await person.hand(scan, () => pressBy(person, person.button('Choose a scan…')))
        await tabTo(person, radio(page, 'The drawing is figured in', 'Inches'))
        await person.press('ArrowRight')
        await tabTo(person, person.field('Your name'))
        await overwrite(person, 'A. Rivet')
        await person.press('Enter')
        await sheetReady(page)

        await person.press('Alt+2')
        await toPart(person, desk(page))
        await pressBy(person, person.button('Name a view'))
        for (const [across, down] of [
          ['ArrowLeft', 'ArrowUp'],
          ['ArrowRight', 'ArrowDown'],
        ] as const) {
          await person.press(`Control+Shift+${across}`, 12)
          await person.press(`Control+Shift+${down}`, 12)
          await person.press('Enter')
        }
        await keep(person, 'Name the view', ['Foundation plate', STATED_SCALE])

        const sizes: [Punch, Punch][] = [
          ['origin', 'along'],
          ['origin', 'across'],
        ]
        for (const [k, [from, to]] of sizes.entries()) {
          await person.press('1')
          await onSheet(page)
          // The corner that both sizes begin at is picked once, and taken again.
          await pickByCross(person, punchAt(from), k === 0 ? 'p' : 'Shift+P')
          await pickByCross(person, punchAt(to))
          const ends: [Punch, Punch] = [from, to]
          await keep(person, 'Figured size', [`${trueDistance(...ends)} mm`])
        }

        await person.press('Alt+3')
        await person.press('1')
        await onSheet(page)
        for (const end of ['near', 'far'] as const) await pickByNumbers(person, punchAt(end))
        await keep(person, 'What was picked', [LABEL])
        await tableSettled(page)

        const [name = ''] = await readdir(join(home, 'jobs'))
        const folder = join(home, 'jobs', name)
        const { job } = await readJobFolder(folder)
        const asked = (['origin', 'along', 'across', 'near', 'far'] as const).map(punchAt)
        const picked = pickedPixels(job)
        expect(picked).toHaveLength(asked.length)
        for (const [k, [x, y]] of asked.entries()) {
          const [px = 0, py = 0] = picked[k] ?? []
          expect(Math.hypot(px - x, py - y)).toBeLessThan(0.2)
        }

        await toPart(person, grid(page))
        await person.press('Control+End')
        const rows = await commandRows(folder)
        expect([await readRow(person)]).toEqual(rows)
        await toPart(person, desk(page))
        expect(await page.getByRole('article', { name: /^Card of/ }).textContent()).toContain(LABEL)
        process.stdout.write(`The plate by the keyboard alone: ${person.keys} keys\n`)
      })
    })
  })
})
