import { expect, it } from 'vitest'
import { pixel } from '../../src/core/geometry/frames.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { edgeCorner, punchAt } from './fixtures/plate.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { placeOf, sheetBox } from './harness/sheet-hand.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'
import { desk, onSheet, sheetReady } from './steps.ts'

type Place = readonly [x: number, y: number]

/** Takes a tool up by its digit, with the whole sheet in sight. */
async function withTool(person: Person, digit: string): Promise<void> {
  await person.press(digit)
  await onSheet(person.page)
  await person.press('w')
}

/** Picks places of the scan from where the whole sheet is seen; the form that comes up then says where they are. */
async function pick(person: Person, ...places: readonly Place[]): Promise<void> {
  const at: Place[] = []
  for (const place of places) at.push(await placeOf(person.page, place))
  for (const place of at) {
    await person.clickAt(place)
    await person.page.waitForTimeout(60)
  }
}

const [left, right] = [edgeCorner('lower left'), edgeCorner('lower right')]
const [upLeft, upRight] = [edgeCorner('upper left'), edgeCorner('upper right')]
const along = (a: Place, b: Place, share: number): Place =>
  pixel(a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]))

inHost(localLauncher(), (session) => {
  it('Nothing is kept that was not meant: no old mark, no line twice, no letter as a command, no edge from before, no finger as a pick', async () => {
    const folder = await plateJob()
    const job = async () => (await readJobFolder(folder)).job
    await session({ opens: { folder } }, async ({ page, person }) => {
      await sheetReady(page)
      await person.station('Pick')
      const form = page.getByRole('form', { name: 'What was picked' })

      // An old mark lies under the pointer: the lens names it, and a click makes a new one all the same.
      await withTool(person, '1')
      await page.mouse.move(...(await placeOf(page, punchAt('origin'))))
      await page
        .locator('.lens-note')
        .getByText(/Shift takes the one that lies here: mark M1/)
        .waitFor()
      await pick(person, punchAt('origin'), punchAt('near'))
      await form.waitFor()

      // What is written is meant for the form, wherever the keyboard is.
      await form.getByRole('button', { name: 'Cancel' }).focus()
      await person.write('s')
      await expect.poll(() => person.field('What is it?').inputValue()).toBe('s')
      await person.press('Backspace')
      await sheetBox(page).focus()
      await person.write('Edge, hide 1')
      await expect.poll(() => person.field('What is it?').inputValue()).toBe('Edge, hide 1')
      await person.press('Enter')
      await form.waitFor({ state: 'detached' })
      const made = await job()
      expect(made.dimensions.at(-1)?.evidence[0]).toMatchObject({
        basis: 'scaled',
        marks: made.marks.slice(-2).map(({ id }) => id),
      })
      const byHand = desk(page).getByRole('checkbox', { name: /^By hand/ })

      // The edge of a stroke holds for one size, is said of it, and the next is read along the middle.
      await person.press('Escape')
      await withTool(person, '2')
      await person.press('e')
      await expect
        .poll(() => desk(page).getByRole('radio', { name: 'Upper or left edge' }).isChecked())
        .toBe(true)
      expect(await byHand.isChecked()).toBe(false)
      await pick(person, along(left, right, 0.3), along(left, right, 0.6))
      await desk(page).getByText('1 of 2 marks picked').waitFor()
      await pick(person, along(left, right, 0.4), along(left, right, 0.8))
      await page.getByText('That is the same line again, and was not taken: pick the other one.').waitFor()
      // The other one by a drag along it, which is two picks.
      const [from, to] = [
        await placeOf(page, along(upLeft, upRight, 0.3)),
        await placeOf(page, along(upLeft, upRight, 0.6)),
      ]
      await page.mouse.move(...from)
      await page.mouse.down()
      await page.mouse.move(...to, { steps: 4 })
      await page.mouse.up()
      await form.waitFor()
      await person.write('Height')
      await person.press('Enter')
      await form.waitFor({ state: 'detached' })
      await tableSettled(page)
      await grid(page).getByText('Height', { exact: true }).waitFor()
      await page
        .getByText(/Read at the edge of line \d+ and the edge of line \d+/)
        .first()
        .waitFor()
      const { marks } = await job()
      for (const mark of marks.slice(-2)) expect(mark.stroke?.reading).not.toBe('centre')
      await person.press('Escape')
      await person.click(person.button('Back to Pick'))
      await withTool(person, '2')
      await expect
        .poll(() => desk(page).getByRole('radio', { name: 'Centre', exact: true }).isChecked())
        .toBe(true)

      // Two fingers move the sheet and enlarge it, and pick nothing.
      const before = await placeOf(page, punchAt('origin'))
      const touch = await page.context().newCDPSession(page)
      const fingers = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: Place[]) =>
        touch.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: points.map(([x, y], id) => ({ x, y, id })),
        })
      const [x, y] = before
      await fingers('touchStart', [x - 20, y])
      await fingers('touchStart', [x - 20, y], [x + 20, y])
      for (const wide of [30, 40, 60]) await fingers('touchMove', [x - wide, y], [x + wide, y])
      await fingers('touchEnd')
      const [px, py] = await placeOf(page, punchAt('origin'))
      expect(Math.hypot(px - x, py - y)).toBeLessThan(3)
      const [ax] = await placeOf(page, punchAt('near'))
      expect(Math.abs(ax - px)).toBeGreaterThan(0)
      expect(await desk(page).getByText('0 of 2 marks picked').count()).toBe(1)
      expect((await job()).marks).toHaveLength(marks.length)
    })
  })
})
