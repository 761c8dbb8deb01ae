import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { type Punch, punchAt } from './fixtures/plate.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import type { Person } from './harness/person.ts'
import { sheetBox, wholeSheet } from './harness/sheet-hand.ts'
import { commandRows } from './harness/table-by-command.ts'
import { grid, readTable, tableSettled } from './harness/table-in-window.ts'
import { desk, newDistance, oneOf, pickPunch, sheetReady } from './steps.ts'

/** Pixels of the scan: how far a pick may lie from the middle of the punch that was pressed. */
const NEAR = 0.15

const coordinate = async (page: Page, name: 'x' | 'y'): Promise<number> =>
  Number(await desk(page).getByLabel(name, { exact: true }).inputValue())

/** Where the last pick is, as the desk has it. */
const lastPick = async (page: Page): Promise<[number, number]> => [
  await coordinate(page, 'x'),
  await coordinate(page, 'y'),
]

async function takeDistance(person: Person): Promise<void> {
  await person.station('Pick')
  await person.click(oneOf(person.page, 'What to measure', 'Distance'))
}

/** Takes the tool up anew and picks one punch. */
async function pickOne(person: Person, punch: Punch, notches?: number): Promise<[number, number]> {
  await takeDistance(person)
  await pickPunch(person, punch, notches)
  await desk(person.page).getByText('1 of 2 marks picked').waitFor()
  return await lastPick(person.page)
}

/** Clicks, reads which pixel that was, and takes the pick back. */
async function clickedPixel(person: Person, at: readonly [number, number]): Promise<[number, number]> {
  await person.clickAt(at)
  await desk(person.page).getByText('1 of 2 marks picked').waitFor()
  const pixel = await lastPick(person.page)
  await person.press('Escape')
  await desk(person.page).getByText('0 of 2 marks picked').waitFor()
  // Another click there at once would make a double click of the two.
  await person.page.waitForTimeout(500)
  return pixel
}

function expectAt([x, y]: readonly [number, number], punch: Punch): void {
  const [px, py] = punchAt(punch)
  expect(Math.hypot(x - px, y - py)).toBeLessThan(NEAR)
}

const moved = (from: readonly [number, number], to: readonly [number, number]): number[] =>
  [to[0] - from[0], to[1] - from[1]].map((way) => Math.round(way * 10) / 10 || 0)

const boxOf = async (what: Locator) => {
  const box = await what.boundingBox()
  if (box === null) throw new Error(`${what} is not in sight.`)
  return box
}

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

describe('The sheet under the hand', () => {
  inEachHost((session) => {
    it('gives the same pixel for the same feature near and far, turned and mirrored', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        for (const notches of [5, 7, 11, 15]) {
          expectAt(await pickOne(person, 'far', notches), 'far')
          // What is given up must not be seen any more: it would stand in the way of the next pick.
          await person.press('Escape')
          await desk(page).getByText('0 of 2 marks picked').waitFor()
          await pickPunch(person, 'far', notches)
          await desk(page).getByText('1 of 2 marks picked').waitFor()
          expectAt(await lastPick(page), 'far')
        }

        await person.station('Sheet')
        await person.click(person.button('Turn a quarter clockwise'))
        expectAt(await pickOne(person, 'near'), 'near')

        await person.station('Sheet')
        await page.getByRole('slider', { name: 'Fine turn' }).focus()
        await person.press('ArrowRight', 37)
        expectAt(await pickOne(person, 'far'), 'far')

        await person.station('Sheet')
        await person.click(
          desk(page)
            .locator('label')
            .filter({ hasText: /^Mirror/ }),
        )
        expectAt(await pickOne(person, 'near'), 'near')
        expectAt(await pickOne(person, 'far', 15), 'far')
      })
    })

    it('moves a pick by a tenth of a pixel with an arrow key and by one with Shift', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        const picked = await pickOne(person, 'near')
        const nudges: [string, number[]][] = [
          ['ArrowRight', [0.1, 0]],
          ['ArrowUp', [0, -0.1]],
          ['Shift+ArrowLeft', [-1, 0]],
          ['Shift+ArrowDown', [0, 1]],
        ]
        let from = picked
        for (const [key, way] of nudges) {
          await person.press(key)
          await expect.poll(async () => moved(from, await lastPick(page))).toEqual(way)
          from = await lastPick(page)
        }
      })
    })

    it('gives up the last pick with Escape, then puts the tool down', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await pickOne(person, 'near')
        await person.press('Escape')
        await desk(page).getByText('0 of 2 marks picked').waitFor()
        await person.press('Escape')
        await desk(page).getByText('marks picked').waitFor({ state: 'detached' })
        const distance = page.getByRole('radio', { name: 'Distance' })
        await expect(distance.isChecked()).resolves.toBe(false)
        const { job } = await readJobFolder(folder)
        expect(job.marks.map(({ id }) => id)).toEqual(['M1', 'M2', 'M3'])
      })
    })

    it('takes an old mark where one lies, so that two sizes from one point share it', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.station('Pick')
        await newDistance(person, ['origin', 'near'], 'Corner to inner punch')
        const { job } = await readJobFolder(folder)
        const made = job.dimensions.find(({ name }) => name === 'corner_to_inner_punch')
        expect(made?.evidence).toMatchObject([{ basis: 'scaled', marks: ['M1', 'M4'] }])
        expect(job.marks).toHaveLength(4)
        expect(await readTable(page)).toEqual(await commandRows(folder))
      })
    })

    it('keeps what was under the pointer there while the wheel turns, and goes with the hand when dragged', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await takeDistance(person)
        await wholeSheet(page)
        const { x, y, width, height } = await boxOf(sheetBox(page))
        const [left, top] = [Math.round(x + width * 0.45), Math.round(y + height * 0.4)]
        const first = await clickedPixel(person, [left, top])
        await page.mouse.wheel(0, -600)
        expect(moved(first, await clickedPixel(person, [left, top]))).toEqual([0, 0])

        await page.keyboard.down('Space')
        await page.mouse.move(left, top)
        await page.mouse.down()
        await page.mouse.move(left + 50, top + 30, { steps: 3 })
        await page.mouse.move(left + 120, top + 70, { steps: 3 })
        await page.mouse.up()
        await page.keyboard.up('Space')
        expect(moved(first, await clickedPixel(person, [left + 120, top + 70]))).toEqual([0, 0])
      })
    })
  })
})

describe('The frame round it', () => {
  inEachHost((session) => {
    it('shows lengths in the other unit and says so, and changes nothing in the job by it', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
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
      })
    })

    it('is light or dark as one likes, and remembers it', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder }, scheme: 'light' }, async ({ page, person }) => {
        const lightness = (): Promise<number> =>
          page.evaluate(() => {
            const numbers = getComputedStyle(document.body).backgroundColor.match(/[\d.]+/g) ?? []
            return numbers.slice(0, 3).reduce((sum, part) => sum + Number(part), 0) / 3
          })
        await tableSettled(page)
        expect(await lightness()).toBeGreaterThan(200)
        await person.click(person.button('Light and dark'))
        await person.click(page.getByRole('menuitemradio', { name: 'Dark' }))
        await expect.poll(lightness).toBeLessThan(60)
        await page.reload()
        await tableSettled(page)
        await expect.poll(lightness).toBeLessThan(60)
      })
    })

    it('has a rule between sheet and table that is moved by hand or by keys, and stays where it was put', async () => {
      const { folder } = await workshopJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        const rule = page.getByRole('separator', { name: 'Height of the table' })
        const height = async (): Promise<number> => (await boxOf(sheetBox(page))).height
        const before = await height()
        await rule.focus()
        await person.press('ArrowUp', 3)
        const byKeys = await height()
        expect(byKeys).toBeLessThan(before - 20)

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
      })
    })

    it('does not move while something is worked out', async () => {
      await session({ opens: 'sample', size: { width: 1280, height: 800 } }, async ({ page, person }) => {
        await sheetReady(page)
        await tableSettled(page)
        await watchPlaces(page)
        await person.click(grid(page).getByText('flange_bore', { exact: true }))
        await person.press('ArrowRight', 4)
        await person.press('F2')
        await person.write('2')
        await person.press('Enter')
        await page.getByText(/^Saved \d\d:\d\d$/).waitFor()
        await tableSettled(page)
        await person.press('Control+z')
        await person.button(/^Redo /).waitFor()
        await tableSettled(page)
        for (const station of ['Scale', 'Pick', 'Hand over', 'Sheet']) await person.station(station)
        const moving = Object.entries(await placesSeen(page)).filter(([, places]) => places.length > 1)
        expect(moving).toEqual([])
      })
    })
  })
})
