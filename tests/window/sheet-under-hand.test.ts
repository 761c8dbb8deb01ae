import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { type Punch, punchAt } from './fixtures/plate.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { boxOf } from './harness/box-of.ts'
import type { Person } from './harness/person.ts'
import { sheetBox, wholeSheet } from './harness/sheet-hand.ts'
import { commandRows } from './harness/table-by-command.ts'
import { readTable } from './harness/table-in-window.ts'
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
  await person.click(oneOf(person.page, 'What to measure', 'Between points'))
}

/** Takes the tool up anew and picks one punch. */
async function pickOne(person: Person, punch: Punch, notches?: number): Promise<[number, number]> {
  await takeDistance(person)
  await pickPunch(person, punch, { notches })
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

/** Places are said to a tenth of a pixel, so two of one place may differ by that. */
const expectSamePlace = (a: readonly [number, number], b: readonly [number, number]): void => {
  for (const way of moved(a, b)) expect(Math.abs(way)).toBeLessThanOrEqual(0.1)
}

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
          await pickPunch(person, 'far', { notches })
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

    it('moves a pick by keys, gives it up, stays under a wheel and goes with the hand, and takes an old mark where one lies', async () => {
      const folder = await plateJob()
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        // By a tenth of a pixel with an arrow key, and by one with Shift.
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

        // Escape gives up the last pick, then puts the tool down.
        await person.press('Escape')
        await desk(page).getByText('0 of 2 marks picked').waitFor()
        await person.press('Escape')
        await desk(page).getByText('marks picked').waitFor({ state: 'detached' })
        const distance = page.getByRole('radio', { name: 'Between points' })
        await expect(distance.isChecked()).resolves.toBe(false)
        const { job: untouched } = await readJobFolder(folder)
        expect(untouched.marks.map(({ id }) => id)).toEqual(['M1', 'M2', 'M3'])

        // What was under the pointer stays there while the wheel turns, and goes with the hand when it is dragged.
        await takeDistance(person)
        await wholeSheet(page)
        const { x, y, width, height } = await boxOf(sheetBox(page))
        const [left, top] = [Math.round(x + width * 0.45), Math.round(y + height * 0.4)]
        const first = await clickedPixel(person, [left, top])
        await page.mouse.wheel(0, -600)
        expectSamePlace(first, await clickedPixel(person, [left, top]))

        await page.keyboard.down('Space')
        await page.mouse.move(left, top)
        await page.mouse.down()
        await page.mouse.move(left + 50, top + 30, { steps: 3 })
        await page.mouse.move(left + 120, top + 70, { steps: 3 })
        await page.mouse.up()
        await page.keyboard.up('Space')
        expectSamePlace(first, await clickedPixel(person, [left + 120, top + 70]))

        // Two sizes from one point share its mark.
        await person.station('Pick')
        await newDistance(person, ['origin', 'near'], 'Corner to inner punch', ['origin'])
        const { job } = await readJobFolder(folder)
        const made = job.dimensions.find(({ name }) => name === 'corner_to_inner_punch')
        expect(made?.evidence).toMatchObject([{ basis: 'scaled', marks: ['M1', job.marks[3]?.id] }])
        expect(job.marks).toHaveLength(4)
        expect(await readTable(page)).toEqual(await commandRows(folder))
      })
    })
  })
})
