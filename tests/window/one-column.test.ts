import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { inEachHost } from './harness/at-the-bench.ts'
import { boxOf } from './harness/box-of.ts'
import { tableSettled } from './harness/table-in-window.ts'
import { violations } from './harness/violations.ts'
import { sheetReady } from './steps.ts'

const WIDE = { width: 1024, height: 700 }
/** What a window of 1440 by 900 is at 200 % (WCAG 2.1, 1.4.10 and 1.4.4). */
const NARROW = { width: 720, height: 450 }

const page = (at: Page) =>
  at.evaluate(() => {
    const { scrollWidth, scrollHeight } = document.documentElement
    const box = (part: string): { left: number; top: number; right: number; width: number } => {
      const { left, top, right, width } = document.querySelector(part)?.getBoundingClientRect() ?? {
        left: Number.NaN,
        top: Number.NaN,
        right: Number.NaN,
        width: Number.NaN,
      }
      return { left, top: top + scrollY, right, width }
    }
    const parts = ['.strip', '.rail', '.middle-sheet', '.middle-table', '.desk']
    return { wide: scrollWidth, high: scrollHeight, rail: box('.rail').width, parts: parts.map(box) }
  })

describe('A window', () => {
  inEachHost((session) => {
    it('shows so much on the sheet as one likes, and remembers it; is as high as what is seen of it, and one column without a sideways scroll where it is narrow', async () => {
      await session({ opens: 'sample', size: WIDE }, async ({ page: at, person }) => {
        await sheetReady(at)
        const shown = person.button(/^Shown on the sheet/)
        const words = async (): Promise<string> => (await shown.textContent()) ?? ''
        await person.station('Pick')
        expect(await words()).toBe('All')
        const over = at.locator('.sheet-view canvas').first()
        const seen = (): Promise<string> => over.evaluate((canvas) => getComputedStyle(canvas).visibility)
        await expect.poll(seen).toBe('visible')
        await person.press('m')
        expect(await words()).toBe('Nothing')
        await expect.poll(seen).toBe('hidden')
        await at.reload()
        await sheetReady(at)
        expect(await words()).toBe('Nothing')
        await person.press('m', 3)
        expect(await words()).toBe('All')

        await tableSettled(at)
        for (const station of ['Sheet', 'Scale', 'Pick', 'Read']) {
          await person.station(station)
          const { wide, high, rail } = await page(at)
          expect({ wide, high, rail }).toEqual({ wide: WIDE.width, high: WIDE.height, rail: 84 })
        }
        // What is disputed is gone to by its key, from wherever the keyboard is; the card comes with it.
        await person.press('d')
        await at.getByRole('article', { name: 'Card of neck_height' }).waitFor()
        expect((await page(at)).high).toBe(WIDE.height)

        await at.setViewportSize(NARROW)
        const narrow = await page(at)
        expect(narrow.wide).toBe(NARROW.width)
        expect(narrow.high).toBeGreaterThan(NARROW.height)
        narrow.parts.forEach(({ left, right, top }, k) => {
          expect(left).toBeGreaterThanOrEqual(0)
          expect(right).toBeLessThanOrEqual(NARROW.width)
          expect(top).toBeGreaterThan(narrow.parts[k - 1]?.top ?? -1)
        })
        for (const station of ['Sheet', 'Scale', 'Pick', 'Read']) {
          await person.station(station)
          expect((await page(at)).wide).toBe(NARROW.width)
        }
        expect(await violations(at, 'one column')).toEqual([])

        // A dialog that is longer than the window scrolls in itself, and what ends it stays to be pressed.
        await at.getByRole('application').focus()
        await person.press('?')
        const keys = at.getByRole('dialog', { name: 'Keys' })
        await keys.getByText('new dimension without a pick').scrollIntoViewIfNeeded()
        const last = await boxOf(keys.getByText('new dimension without a pick'))
        expect(last.y + last.height).toBeLessThan(NARROW.height)
        await person.click(keys.getByRole('button', { name: 'Close' }))
        await person.station('Sheet')
        await person.click(person.button('Size limits…'))
        const limits = at.getByRole('dialog', { name: 'Size limits' })
        const end = await boxOf(limits.getByRole('button', { name: 'Set them' }))
        expect(end.y + end.height).toBeLessThan(NARROW.height)
      })
    })
  })
})
