import { readFile } from 'node:fs/promises'
import { describe, expect, it } from 'vitest'
import { historyFile } from '../../src/main/services/job-layout/job-layout.ts'
import { BAR_FIGURES, figuredBar, roundFigure } from './fixtures/figured-bar.ts'
import { readByHeart } from './fixtures/read-by-heart.ts'
import { ventilatorToRead } from './fixtures/ventilator-to-read.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { overwrite, pickByCross, tabTo, toPart, withoutMouse } from './harness/by-keyboard.ts'
import type { Person } from './harness/person.ts'
import { tableByCommand } from './harness/program.ts'
import { placeOf } from './harness/sheet-hand.ts'
import { tableSettled } from './harness/table-in-window.ts'
import { violations } from './harness/violations.ts'
import { desk, sheetReady } from './steps.ts'

type Place = readonly [number, number]

/** The stained figure of the hood on the sample's sheet, with some room round it. */
const HOOD: readonly [Place, Place] = [
  [1030, 440],
  [1290, 560],
]
const NOTHING: readonly [Place, Place] = [
  [2040, 700],
  [2200, 780],
]

/** Drags a box over the sheet, from corner to corner. */
async function dragBox({ page }: Person, [from, to]: readonly [Place, Place]): Promise<void> {
  const [x, y] = await placeOf(page, from)
  const [right, foot] = await placeOf(page, to)
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move((x + right) / 2, (y + foot) / 2, { steps: 4 })
  await page.mouse.move(right, foot, { steps: 4 })
  await page.mouse.up()
}

const choices = ({ page }: Person) => page.getByRole('listbox', { name: 'What it could be' })
const chosen = (person: Person) => choices(person).getByRole('option', { selected: true })
const form = ({ page }: Person) => page.getByRole('form', { name: 'Figure that was read' })
const list = ({ page }: Person) => page.getByRole('listbox', { name: 'Figures of this sheet' })
const listed = (person: Person) => list(person).getByRole('option', { selected: true })
const onList = (person: Person): Promise<unknown> =>
  person.page.waitForFunction(
    () => document.activeElement?.getAttribute('aria-label') === 'Figures of this sheet',
  )

interface Piece {
  basis: string
  text?: string
  legibility?: string
  read?: { text: string; probability: number }
  candidates?: { text: string }[]
}

/** The printed evidence that the newest edit adds, as the history on disk has it. */
async function printedLast(folder: string): Promise<Piece | undefined> {
  const lines = (await readFile(historyFile(folder), 'utf8')).trim().split('\n')
  const { edit } = JSON.parse(lines.at(-1) ?? '') as { edit: { item: Piece & { evidence?: Piece[] } } }
  return edit.item.evidence?.[0] ?? edit.item
}

describe('A restorer reads figures', () => {
  inEachHost((session) => {
    it('in a box: what it could be by keyboard, weighed by what is scaled, and kept as doubtful', async () => {
      const folder = await ventilatorToRead()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await readByHeart(page)
        await sheetReady(page)
        await tableSettled(page)
        await person.press('Alt+4')
        expect(await desk(page).locator('[data-next]').textContent()).toMatch(/^Drag a box round a figure/)

        await dragBox(person, HOOD)
        await choices(person).waitFor()
        expect(await page.locator('.read-as-sure').textContent()).toBe('doubtful: 52 %')
        expect(await chosen(person).textContent()).toContain('11 7/8"')
        await person.press('ArrowDown')
        expect(await chosen(person).textContent()).toContain('11 1/2"')
        await person.press('3')
        expect(await chosen(person).textContent()).toContain('14 1/2"')
        expect(await violations(page, 'what a figure could be')).toEqual([])

        // Of the hood, whose size is scaled as well: that speaks for one of them.
        await person.click(person.button(/^Of “Hood, outside diameter”, which comes to 11\.4/))
        await expect.poll(() => choices(person).getByRole('option').first().textContent()).toMatch(/11 1\/2"/)
        await expect
          .poll(() => choices(person).getByRole('option').first().textContent())
          .toMatch(/scaled agrees, 0\.0\d\d" off/)
        await choices(person).focus()
        await person.press('1')
        await person.press('Enter')
        await page.getByRole('article', { name: 'Card of hood_od' }).waitFor()
        await tableSettled(page)

        const { rows } = JSON.parse(await tableByCommand(folder)) as {
          rows: { name: string; basis: string }[]
        }
        expect(rows.find(({ name }) => name === 'hood_od')?.basis).toBe('scaled')
        expect(await printedLast(folder)).toMatchObject({
          text: 'Ø 11 1/2"',
          legibility: 'doubtful',
          read: { text: 'Ø 11 7/8"', probability: 0.52 },
          candidates: [{ text: 'Ø 11 7/8"' }, { text: 'Ø 11 1/2"' }, { text: 'Ø 14 1/2"' }],
        })

        // On its card what it could be is weighed by what is scaled; deciding is an edit of its own name.
        const could = page.getByRole('region', { name: /^What printed 1 could be$/ })
        await could.waitFor()
        expect(await could.getByRole('listitem').first().textContent()).toMatch(/11 1\/2".*9\d %/)
        expect(await violations(page, 'a doubtful figure on its card')).toEqual([])
        await person.click(could.getByRole('button', { name: 'It is this: Ø 11 1/2"' }))
        await could.waitFor({ state: 'detached' })
        expect(await person.button(/^Undo/).textContent()).toContain('read printed 1 of hood_od as Ø 11 1/2"')
        await person.press('Control+z')
        await could.waitFor()
      })
    })

    it('by the keyboard alone, from the corners of the box to the table', async () => {
      const folder = await ventilatorToRead()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await readByHeart(page)
        withoutMouse(page)
        await sheetReady(page)
        await tableSettled(page)
        await person.press('Alt+4')
        await toPart(person, page.getByRole('application'))
        for (const corner of HOOD) await pickByCross(person, corner)
        await choices(person).waitFor()
        await person.press('2')
        await tabTo(person, page.getByRole('checkbox', { name: /^I am sure of it/ }))
        await person.press('Space')
        await tabTo(person, person.field('What is it?'))
        await overwrite(person, 'Hood, figured')
        await person.press('Enter')
        await page.getByRole('article', { name: 'Card of hood_figured' }).waitFor()
        expect(await printedLast(folder)).toMatchObject({ text: 'Ø 11 1/2"', legibility: 'clear' })
      })
    })

    it('in a box where none is read, given up by Esc, and written otherwise with how it parses; and of a title block, taken field by field into the record and never by itself', async () => {
      const folder = await ventilatorToRead()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await readByHeart(page)
        await sheetReady(page)
        await tableSettled(page)
        await person.station('Read')
        await dragBox(person, NOTHING)
        await page.getByText('No figure is read here').waitFor()
        await person.press('Escape')
        await form(person).waitFor({ state: 'detached' })

        await dragBox(person, HOOD)
        await choices(person).waitFor()
        await person.press('c')
        await person.write('11 9/')
        await form(person).locator('.draft-verdict-wrong').waitFor()
        expect(await person.button('Take this figure').isDisabled()).toBe(true)
        await person.write('16')
        await form(person).getByText('Read as').first().waitFor()
        await tabTo(person, person.field('What is it?'))
        await overwrite(person, 'Hood, rim')
        await person.press('Enter')
        await page.getByRole('article', { name: 'Card of hood_rim' }).waitFor()
        // What a person wrote is theirs and sure; what was read by itself stands beside it.
        expect(await printedLast(folder)).toMatchObject({
          text: '11 9/16',
          legibility: 'clear',
          read: { text: 'Ø 11 7/8"' },
        })
        await page.getByText('By itself it was read as “Ø 11 7/8"”').waitFor()

        // What a title block says.
        await person.station('Sheet')
        const record = person.field('Date')
        const before = await record.inputValue()
        await person.click(person.button('Read the title block'))
        const proposed = page.getByRole('list', { name: 'What the title block says' })
        await proposed.getByText('14 MARCH 1911').waitFor()
        expect(await record.inputValue()).toBe(before)
        // A hint may stand where the pointer came to lie.
        await page.mouse.move(0, 0)
        await page.locator('.button-hint').waitFor({ state: 'detached' })
        expect(await violations(page, 'what a title block says')).toEqual([])
        await person.click(person.button('Take: Date 14 MARCH 1911'))
        await expect.poll(() => record.inputValue()).toBe('14 MARCH 1911')
        await person.click(person.button(/^Take: Scale/))
        await expect.poll(() => person.field('Description').inputValue()).toMatch(/Scale: 3" & 6" = 1'-0"$/)
        expect(await record.inputValue()).toBe('14 MARCH 1911')
        await person.press('Control+z')
        await person.press('Control+z')
        await expect.poll(() => record.inputValue()).toBe(before)
      })
    })

    it('of a whole sheet: begun, stopped, gone on with; taken, corrected and dismissed by keys, with undo', async () => {
      const folder = await ventilatorToRead()
      await session({ opens: { folder } }, async ({ page, person }) => {
        const asked = await readByHeart(page)
        await sheetReady(page)
        await tableSettled(page)
        await person.station('Read')
        await person.click(person.button('Read all figures'))
        await page.getByRole('region', { name: 'Work going on' }).waitFor()
        await person.click(person.button('Stop reading'))
        await page.getByText('Stopped: 3 of 9 figures were read.').waitFor()
        await page.getByRole('region', { name: 'Work going on' }).waitFor({ state: 'detached' })
        await person.click(person.button('Go on reading'))
        await page.getByText('9 figures were found and read.').waitFor()
        expect(asked).toEqual(['read-sheet', 'stop-reading', 'read-sheet'])
        await desk(page).getByText('9 to look at').waitFor()

        // It says what it reads with, and reads without that where somebody says so.
        await desk(page).getByText('Reads with the hand of 4 figures taken on this sheet.').waitFor()
        await person.click(desk(page).getByText('Read with the hand of this sheet'))
        const withHand = desk(page).getByRole('checkbox', { name: 'Read with the hand of this sheet' })
        await expect.poll(() => withHand.isChecked()).toBe(false)
        expect(asked.at(-1)).toBe('read-with-hand')

        // The most doubtful first: what is no figure at all is dismissed.
        await list(person).focus()
        expect(await listed(person).textContent()).toContain('no figure')
        await person.press('x')
        await desk(page).getByText('8 to look at').waitFor()
        expect(await listed(person).textContent()).toContain('11 7/8"')

        // It comes back by undo, and goes by redo.
        await person.press('Control+z')
        await desk(page).getByText('9 to look at').waitFor()
        await person.press('Control+Shift+z')
        await desk(page).getByText('8 to look at').waitFor()

        // Corrected: what the person writes stands in the table.
        await person.press('c')
        await form(person).waitFor()
        await person.write('11 1/2" DIA.')
        await tabTo(person, person.field('What is it?'))
        await overwrite(person, 'Hood over all')
        await person.press('Enter')
        await form(person).waitFor({ state: 'detached' })
        await desk(page).getByText('7 to look at').waitFor()
        await onList(person)

        // Taken as it is read.
        await person.press('End')
        await person.press('p')
        await person.press('n')
        const last = (await listed(person).textContent()) ?? ''
        await person.press('Enter')
        await choices(person).waitFor()
        await person.press('Enter')
        await form(person).waitFor({ state: 'detached' })
        await desk(page).getByText('6 to look at').waitFor()
        await tableSettled(page)
        const { rows } = JSON.parse(await tableByCommand(folder)) as { rows: { written: string }[] }
        expect(last).toContain(rows.at(-1)?.written ?? '?')

        // What was dealt with is shown again where that is wanted, and one of it recalled.
        await person.click(page.getByText('Show what was taken or dismissed'))
        await expect.poll(() => list(person).getByRole('option').count()).toBe(9)
        expect(await violations(page, 'all figures of a sheet')).toEqual([])
        await person.click(list(person).getByText('dismissed'))
        await list(person).focus()
        await person.press('x')
        await desk(page).getByText('7 to look at').waitFor()
      })
    })

    it('by the reader itself: in a box, then of the whole sheet, and taken by keys with undo', async () => {
      const folder = await figuredBar()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.press('Alt+4')
        await dragBox(person, roundFigure('8 3/4"'))
        await choices(person).waitFor()
        await choices(person).getByRole('option').filter({ hasText: '8 3/4"' }).waitFor()
        await person.press('Escape')
        await form(person).waitFor({ state: 'detached' })

        await person.click(person.button('Read all figures'))
        await page.getByText(/^The sheet was read: /).waitFor()
        const rows = list(person).getByRole('option')
        for (const text of BAR_FIGURES) await rows.filter({ hasText: text }).waitFor()
        const open = await rows.count()
        await desk(page).getByText(`${open} to look at`).waitFor()

        await list(person).focus()
        await person.press('Home')
        for (let k = 1; k < open && !(await listed(person).textContent())?.includes('12"'); k++) {
          await person.press('n')
        }
        await person.press('Enter')
        await choices(person).waitFor()
        await desk(page).getByText('Take what it says, or write it otherwise.').waitFor()
        await person.press('Enter')
        await form(person).waitFor({ state: 'detached' })
        expect(await printedLast(folder)).toMatchObject({ text: '12"', read: { text: '12"' } })
        await desk(page)
          .getByText(`${open - 1} to look at`)
          .waitFor()
        await person.press('Control+z')
        await desk(page).getByText(`${open} to look at`).waitFor()
      })
    })
  })
})
