import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { boxOf } from './harness/box-of.ts'
import { sheetBox } from './harness/sheet-hand.ts'
import { commandRows } from './harness/table-by-command.ts'
import { grid, readTable, tableSettled } from './harness/table-in-window.ts'
import { oneOf, sheetReady } from './steps.ts'

/** Parts of the frame that stand still whatever is worked out in them. */
const STILL = [
  '.strip > *',
  '.rail',
  '.middle-sheet',
  '.divider',
  '.middle-table',
  '.table-tools > *',
  '.table-head-cell',
  '.table-cautions',
  '.desk',
]

/** From now on every place that any of these parts has at any frame is written down. */
const watchPlaces = (page: Page): Promise<void> =>
  page.evaluate((parts) => {
    const places: Record<string, string[]> = {}
    const look = (): void => {
      for (const part of parts) {
        for (const [k, element] of document.querySelectorAll(part).entries()) {
          const { x, y, width, height } = element.getBoundingClientRect()
          const place = [x, y, width, height].join(' ')
          places[`${part} ${k}`] ??= []
          const seen = places[`${part} ${k}`]
          if (seen !== undefined && !seen.includes(place)) seen.push(place)
        }
      }
      requestAnimationFrame(look)
    }
    Object.assign(window, { placesSeen: places })
    look()
  }, STILL)

const placesSeen = (page: Page): Promise<Record<string, string[]>> =>
  page.evaluate(() => (window as unknown as { placesSeen: Record<string, string[]> }).placesSeen)

describe('The frame round it', () => {
  inEachHost((session) => {
    it('shows lengths in the other unit and says so, is light or dark, and has a rule that is moved; remembers it, and changes nothing in the job by it', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder }, scheme: 'light' }, async ({ page, person }) => {
        await sheetReady(page)
        const before = await readTable(page)
        await person.click(oneOf(page, 'Unit looked at', 'mm'))
        await page.getByText('Shown in millimetres; the job is in inches.').waitFor()
        await tableSettled(page)
        const shown = await readTable(page)
        expect(shown.map((row) => row['figure ± U (95 %)'])).toEqual([
          expect.stringContaining('152.4 mm'),
          expect.stringContaining('76.2 mm'),
        ])
        await person.click(oneOf(page, 'Unit looked at', 'in'))
        await page.getByText('Shown in millimetres').waitFor({ state: 'detached' })
        expect(await readTable(page)).toEqual(before)
        expect(before).toEqual(await commandRows(folder))
        await expect(page.getByText('Nothing changed yet').isVisible()).resolves.toBe(true)

        const lightness = (): Promise<number> =>
          page.evaluate(() => {
            const numbers = getComputedStyle(document.body).backgroundColor.match(/[\d.]+/g) ?? []
            return numbers.slice(0, 3).reduce((sum, part) => sum + Number(part), 0) / 3
          })
        expect(await lightness()).toBeGreaterThan(200)
        await person.click(person.button('Light and dark'))
        await person.click(page.getByRole('menuitemradio', { name: 'Dark' }))
        await expect.poll(lightness).toBeLessThan(60)

        // Moved by keys, and by hand.
        const rule = page.getByRole('separator', { name: 'Height of the table' })
        const height = async (): Promise<number> => (await boxOf(sheetBox(page))).height
        const higher = await height()
        await rule.focus()
        await person.press('ArrowUp', 3)
        const byKeys = await height()
        expect(byKeys).toBeLessThan(higher - 20)

        const { x, y, width, height: thick } = await boxOf(rule)
        await page.mouse.move(x + width / 2, y + thick / 2)
        await page.mouse.down()
        await page.mouse.move(x + width / 2, y + thick / 2 + 100, { steps: 5 })
        await page.mouse.up()
        const byHand = await height()
        expect(Math.abs(byHand - byKeys - 100)).toBeLessThan(6)

        await page.reload()
        await sheetReady(page)
        await expect.poll(height).toBe(byHand)
        await tableSettled(page)
        await expect.poll(lightness).toBeLessThan(60)
      })
    })

    it('does not move while something is worked out', async () => {
      await session({ opens: 'sample', size: { width: 1280, height: 800 } }, async ({ page, person }) => {
        await sheetReady(page)
        await tableSettled(page)
        await watchPlaces(page)
        await person.click(grid(page).getByText('flange_bore', { exact: true }))
        await person.press('End')
        await person.press('F2')
        await person.write('2')
        await person.press('Enter')
        await page.getByText(/^Saved \d\d:\d\d$/).waitFor()
        await tableSettled(page)
        await person.press('Control+z')
        await person.button(/^Redo /).waitFor()
        await tableSettled(page)
        for (const station of ['Scale', 'Pick', 'Sheet']) await person.station(station)
        const moving = Object.entries(await placesSeen(page)).filter(([, places]) => places.length > 1)
        expect(moving).toEqual([])
      })
    })
  })
})
