import { describe, expect, it } from 'vitest'
import { type Pixel, pixel } from '../../src/core/geometry/frames.ts'
import type { Mark } from '../../src/core/job/model/types.ts'
import type { Table } from '../../src/core/ledger/table/table.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import {
  EDGE_HIGH,
  EDGE_LONG,
  edgeCorner,
  onSlotEnd,
  onSlotSide,
  punchAt,
  SLOT_SIZES,
} from './fixtures/plate.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { pickByCross } from './harness/by-keyboard.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { tableByCommand } from './harness/program.ts'
import { placeOf, sheetBox } from './harness/sheet-hand.ts'
import { tableSettled } from './harness/table-in-window.ts'
import { desk, oneOf, sheetReady } from './steps.ts'

/** From the whole sheet in sight to a corner of the plate close to. */
const NOTCHES = 14
/** The pointer of a careful hand comes within this of what is meant, pixels of the scan. */
const ASTRAY = 2.3

/** What is said of strokes as wide as the plate's edge: it is drawn 3 px wide, and read to within 0.2 px. */
const CROSSING = /^Centre of a crossing of strokes, (?:2\.[89]|3\.[012]) px wide\.$/
const STRAIGHT = /^Centre of a straight stroke, (?:2\.[89]|3\.[012]) px wide\.$/

/** Goes close to a place of the scan, and says where it is on the page then. */
async function closeTo({ page }: Person, [x, y]: Pixel): Promise<[number, number]> {
  await sheetBox(page).focus()
  await page.keyboard.press('w')
  const [px, py] = await placeOf(page, [x, y])
  await page.mouse.move(px, py)
  // All at once, as a wheel that spins: each notch by itself would have the sheet drawn once more.
  await page.mouse.wheel(0, -120 * NOTCHES)
  const [nx, ny] = await placeOf(page, [x, y])
  return [nx, ny]
}

async function pick(person: Person, pixel: Pixel, key?: 'Alt'): Promise<void> {
  const place = await closeTo(person, pixel)
  if (key !== undefined) await person.page.keyboard.down(key)
  await person.clickAt(place)
  if (key !== undefined) await person.page.keyboard.up(key)
}

const says = (person: Person, words: string | RegExp) => desk(person.page).getByText(words).first().waitFor()

const astray = ([x, y]: Pixel): Pixel => pixel(x + ASTRAY, y - ASTRAY / 2)

/** Puts the tool in hand down close to a place of the scan, and chooses what lies there. */
async function choosing(person: Person, place: Pixel): Promise<void> {
  const at = await closeTo(person, place)
  await person.press('Escape')
  await person.clickAt(at)
}

const far = (mark: Mark | undefined, [x, y]: Pixel): number =>
  mark?.kind === 'point' ? Math.hypot(mark.pixel[0] - x, mark.pixel[1] - y) : Number.POSITIVE_INFINITY

/** The two fields on the desk say where the newest pick is: the form that names it is written and kept. */
async function keepAs(person: Person, label: string): Promise<void> {
  const form = person.page.getByRole('form', { name: 'What was picked' })
  await form.waitFor()
  await person.write(label)
  await person.press('Enter')
  await form.waitFor({ state: 'detached' })
  await tableSettled(person.page)
}

const form = ({ page }: Person) => page.getByRole('form', { name: 'What was picked' })

const formSays = (person: Person, words: RegExp | string) => form(person).getByText(words).waitFor()

describe('Somebody who picks on strokes', () => {
  inHost(localLauncher(), (session) => {
    it('takes crossings finer than a hand can, by pointer and by keyboard, and by hand where that is meant', async () => {
      const folder = await plateJob()
      const newMarks = async () => (await readJobFolder(folder)).job.marks.slice(3)
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.station('Pick')
        await person.click(oneOf(page, 'What to measure', 'Between points'))
        await sheetBox(page).focus()
        const otherInk = desk(page).getByRole('checkbox', { name: /^Light on dark/ })
        await person.press('i')
        await expect.poll(() => otherInk.isChecked()).toBe(true)
        await pick(person, astray(edgeCorner('lower left')))
        await says(person, /What lies here is not in the ink that is looked for/)
        await person.press('Escape')
        await person.click(desk(page).locator('label', { hasText: 'Light on dark' }))
        await expect.poll(() => otherInk.isChecked()).toBe(false)
        await pick(person, astray(edgeCorner('lower left')))
        await says(person, CROSSING)
        await sheetBox(page).focus()
        await pickByCross(person, astray(edgeCorner('lower right')))
        await formSays(person, CROSSING)
        await keepAs(person, 'Lower edge')

        const found = await newMarks()
        expect(found).toHaveLength(2)
        for (const mark of found) {
          expect(mark).toMatchObject({ how: 'stroke', stroke: { as: 'crossing', reading: 'centre' } })
          expect(mark.sigma).toBeLessThan(0.3)
        }
        expect(far(found[0], edgeCorner('lower left'))).toBeLessThan(0.1)
        expect(far(found[1], edgeCorner('lower right'))).toBeLessThan(0.1)
        const table = JSON.parse(await tableByCommand(folder)) as Table
        const row = table.rows.find(({ label }) => label === 'Lower edge')
        expect(Math.abs((row?.value ?? 0) - EDGE_LONG)).toBeLessThan(row?.U ?? 0)

        await pick(person, astray(edgeCorner('upper left')), 'Alt')
        await says(person, 'Picked by hand.')
        await pick(person, pixel(1000, 600))
        await formSays(person, /^Second end: by hand\. .*by hand, or go nearer\.$/)
        await keepAs(person, 'Corner to bare paper')
        const byHand = (await newMarks()).slice(2)
        expect(byHand).toHaveLength(2)
        for (const mark of byHand) expect(mark).toMatchObject({ how: 'hand', sigma: 1 })
        expect(far(byHand[0], astray(edgeCorner('upper left')))).toBeLessThan(0.3)

        // A slot by one drag over the whole sheet; then its ends once more, of which the first is picked twice.
        await sheetBox(page).focus()
        await person.press('w')
        await person.press('s')
        const [from, to] = [await placeOf(page, onSlotEnd(-1, 0.3)), await placeOf(page, onSlotEnd(1, -0.2))]
        await page.mouse.move(...from)
        await page.mouse.down()
        await page.mouse.move(...to, { steps: 4 })
        await page.mouse.up()
        await formSays(person, /^Centre of an arc, (?:2\.[89]|3\.[012]) px wide\.$/)
        await person.write('Slot')
        await formSays(person, 'In formulas: slot_length')
        await person.click(form(person).locator('label', { hasText: 'Keep the distance between centres' }))
        await person.press('Enter')
        await form(person).waitFor({ state: 'detached' })
        await tableSettled(page)
        const { rows } = JSON.parse(await tableByCommand(folder)) as Table
        expect(rows.slice(-2).map(({ name }) => name)).toEqual(['slot_width', 'slot_length'])
        for (const size of ['width', 'length'] as const) {
          const kept = rows.find(({ name }) => name === `slot_${size}`)
          expect(Math.abs((kept?.value ?? 0) - SLOT_SIZES[size])).toBeLessThan(kept?.U ?? 0)
        }
        expect((await newMarks()).slice(4).map(({ stroke }) => stroke?.as)).toEqual(['arc', 'arc'])
        await person.clickAt(await placeOf(page, onSlotEnd(1)))
        await says(person, /^Centre of an arc/)
        await person.clickAt(await placeOf(page, onSlotEnd(1, 0.6)))
        await page.getByText('That is the same round end again').first().waitFor()
        await person.clickAt(await placeOf(page, onSlotSide()))
        await page.getByText('From this one pick no round end was found').first().waitFor()
        await says(person, /^Second end: pick a second point on the rim/)
        await person.press('Escape', 3)
        await person.press('Control+z')
        await tableSettled(page)
        const undone = JSON.parse(await tableByCommand(folder)) as Table
        expect(undone.rows.some(({ name }) => name.startsWith('slot_'))).toBe(false)
      })
    })

    it('finds a line again, and picks a point again without sight of it', async () => {
      const folder = await plateJob()
      const job = async () => (await readJobFolder(folder)).job
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.station('Pick')
        await person.click(oneOf(page, 'What to measure', 'Between lines'))
        const [left, right] = [edgeCorner('lower left'), edgeCorner('lower right')]
        const [upLeft, upRight] = [edgeCorner('upper left'), edgeCorner('upper right')]
        for (const [[ax, ay], [bx, by]] of [
          [left, right],
          [upLeft, upRight],
        ] as const) {
          await pick(person, pixel(ax + 60, ay + ASTRAY))
          await pick(person, pixel(bx - 60, by - ASTRAY))
        }
        await formSays(person, STRAIGHT)
        await keepAs(person, 'Height of the plate')
        const lines = (await job()).marks.filter(({ kind }) => kind === 'line')
        expect(lines).toHaveLength(2)
        for (const mark of lines) expect(mark).toMatchObject({ how: 'stroke', stroke: { as: 'line' } })
        const table = JSON.parse(await tableByCommand(folder)) as Table
        const row = table.rows.find(({ label }) => label === 'Height of the plate')
        expect(Math.abs((row?.value ?? 0) - EDGE_HIGH)).toBeLessThan(row?.U ?? 0)

        await choosing(person, pixel((left[0] + right[0]) / 2, left[1]))
        await says(person, /^Line \d+$/)
        await says(person, /profiles kept/)
        await person.click(person.button('Find again'))
        await says(person, /px across it$/)
        await person.click(person.button('Take what was found again'))
        await person.button('Take what was found again').waitFor({ state: 'detached' })
        expect((await job()).marks.find(({ id }) => id === lines[0]?.id)).toMatchObject({ how: 'stroke' })

        await person.click(person.button('Back to Pick'))
        await person.click(oneOf(page, 'What to measure', 'Between points'))
        await choosing(person, punchAt('origin'))
        await says(person, 'Point M1')
        await says(person, /^Picked once/)
        await person.click(person.button('Pick again, without sight of it'))
        await expect(desk(page).getByText(/px$/).count()).resolves.toBe(0)
        for (const by of [0.8, -0.6]) {
          const [x, y] = punchAt('origin')
          await pick(person, pixel(x + by, y - by))
          await person.click(person.button('Keep this pick, and go on'))
          await page.getByRole('form', { name: 'Picked again' }).waitFor({ state: 'detached' })
        }
        await person.click(person.button('Done: show how they scatter'))
        await says(person, /^Picked 3 times, scattered by a standard deviation of \d/)
        const again = (await job()).marks.find(({ id }) => id === 'M1')
        expect(again?.repeats).toHaveLength(2)
        expect(again?.repeatedBy?.every(({ at }) => at !== undefined)).toBe(true)
      })
    })
  })
})
