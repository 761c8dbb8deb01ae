import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { newJob } from '../../src/core/job/model/new-job.ts'
import { createJob } from '../../src/main/services/job-folder/create-job.ts'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { boxOf } from './harness/box-of.ts'
import type { Person } from './harness/person.ts'
import { sheetBox } from './harness/sheet-hand.ts'
import { desk, sheetReady } from './steps.ts'

/** Whole tiles, so that four of them meet in the middle at every level. */
const SIDE = 2048

/** A job with one sheet of upright bands in even greys, from left to right. @returns its folder */
async function bandsJob(greys: readonly number[]): Promise<string> {
  const parent = await temporaryFolder()
  const row = Uint8Array.from({ length: SIDE }, (_, x) => greys[Math.floor((x * greys.length) / SIDE)] ?? 0)
  const pixels = new Uint8Array(SIDE * SIDE)
  for (let y = 0; y < SIDE; y++) pixels.set(row, y * SIDE)
  const scan = join(parent, 'bands.png')
  await sharp(pixels, { raw: { width: SIDE, height: SIDE, channels: 1 } })
    .png()
    .toFile(scan)
  const folder = join(parent, 'job')
  await createJob(folder, [scan], ([added]) => {
    if (added === undefined) throw new Error('the scan was not added')
    return {
      ...newJob('Bands', 'mm'),
      people: [{ id: 'AR', name: 'A. Rivet' }],
      sheets: [{ id: 'S1', title: 'Bands', record: {}, scan: added.scan }],
    }
  })
  return folder
}

/** Waits until there is something to see, and all of its pictures are made. */
async function scanInSight(page: Page): Promise<void> {
  await page.locator('.scan-layer-picture').first().waitFor()
  await sheetReady(page)
}

/** Greys of a square round the middle of the sheet's box, as they are seen. */
async function greysAtMiddle(page: Page, side: number): Promise<{ least: number; most: number }> {
  const box = await boxOf(sheetBox(page))
  // Of the page as a whole: a picture of a part of it has pixels at its corners that are not on the screen.
  const { channels } = await sharp(
    await sharp(await page.screenshot({ scale: 'css' }))
      .removeAlpha()
      .extract({
        left: Math.round(box.x + (box.width - side) / 2),
        top: Math.round(box.y + (box.height - side) / 2),
        width: side,
        height: side,
      })
      .png()
      .toBuffer(),
  ).stats()
  return {
    least: Math.min(...channels.map(({ min }) => min)),
    most: Math.max(...channels.map(({ max }) => max)),
  }
}

const zoomed = async (page: Page): Promise<number> =>
  Number.parseFloat((await page.locator('.zoom-buttons-scale').textContent()) ?? '') / 100

/** Turns the wheel over the middle of the sheet until it is so near. */
async function zoomTo(page: Page, zoom: number): Promise<void> {
  const box = await boxOf(sheetBox(page))
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  for (let k = 0; k < 60; k++) {
    const far = Math.log(zoom / (await zoomed(page)))
    if (Math.abs(far) < 0.01) break
    await page.mouse.wheel(0, -Math.max(-300, Math.min(300, far / 0.0018)))
    await page.waitForTimeout(30)
  }
  await rested(page)
}

/** What is in sight comes to rest: nothing is on its way any more. */
const rested = (page: Page): Promise<void> => page.waitForTimeout(700)

const turnOn = (person: Person, name: string): Promise<void> =>
  person.click(
    desk(person.page)
      .locator('label')
      .filter({ hasText: new RegExp(`^${name}`) }),
  )

/** The middle of the sheet is looked at in so many CSS pixels: corners of the box are off a small sheet. */
const LOOK = 300
const FLAT = 180

describe('The scan on the screen', () => {
  inEachHost((session) => {
    it('is never blank between two levels, and shows no seam between its tiles, near and far, turned, mirrored and lifted', async () => {
      const folder = await bandsJob([FLAT])
      await session({ opens: { folder } }, async ({ page, person }) => {
        await scanInSight(page)
        const box = await boxOf(sheetBox(page))
        await person.press('w')
        await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
        for (const notch of [...Array<number>(14).fill(-240), ...Array<number>(14).fill(240)]) {
          await page.mouse.wheel(0, notch)
          const { least, most } = await greysAtMiddle(page, 100)
          expect([least, most].every((grey) => Math.abs(grey - FLAT) <= 2)).toBe(true)
        }

        // Once it has come to rest, however long this machine takes over that.
        const flat = async (grey: number): Promise<void> => {
          const off = async (): Promise<number> => {
            const { least, most } = await greysAtMiddle(page, LOOK)
            return Math.max(grey - least, most - grey)
          }
          await expect.poll(off, { timeout: 10_000 }).toBeLessThanOrEqual(1)
        }
        const nearAndFar = async (grey: number): Promise<void> => {
          for (const zoom of [0.33, 1.37, 5]) {
            await zoomTo(page, zoom)
            await flat(grey)
          }
        }
        await nearAndFar(FLAT)
        await page.getByRole('slider', { name: 'Fine turn' }).focus()
        await person.press('ArrowRight', 33)
        await flat(FLAT)
        await turnOn(person, 'Mirror')
        await nearAndFar(FLAT)
        await turnOn(person, 'Negative')
        await flat(255 - FLAT)
        await turnOn(person, 'Negative')
        await turnOn(person, 'Fade stains')
        await rested(page)
        await nearAndFar(255)
      })
    })

    it('has greys that are its own, their negative, and further from the middle with contrast', async () => {
      const greys = [60, 110, 160, 210]
      const folder = await bandsJob(greys)
      await session({ opens: { folder } }, async ({ page, person }) => {
        await scanInSight(page)
        await page.getByRole('button', { name: /^1 : 1/ }).click()
        await rested(page)
        const seen = async (): Promise<number[]> => {
          const box = await boxOf(sheetBox(page))
          // The middle of the sheet is between the second band and the third.
          const found: number[] = []
          for (const way of [-200, 200]) {
            const clip = { x: box.x + box.width / 2 + way, y: box.y + box.height / 2, width: 8, height: 8 }
            const { channels } = await sharp(await page.screenshot({ clip, scale: 'css' })).stats()
            found.push(Math.round(channels[0]?.mean ?? Number.NaN))
          }
          return found
        }
        const near = (found: readonly number[], wanted: readonly number[]): void => {
          for (const [i, grey] of wanted.entries()) {
            expect(Math.abs((found[i] ?? Number.NaN) - grey)).toBeLessThanOrEqual(1)
          }
        }
        near(await seen(), [110, 160])
        await turnOn(person, 'Negative')
        await rested(page)
        near(await seen(), [145, 95])
        await turnOn(person, 'Mirror')
        await rested(page)
        near(await seen(), [95, 145])
        await turnOn(person, 'Mirror')
        await turnOn(person, 'Negative')
        await page.getByRole('slider', { name: 'Contrast' }).focus()
        await person.press('ArrowRight', 5)
        await rested(page)
        // Filter Effects Module Level 1, 9.1: v' = c v + (1 - c) / 2 of values from 0 to 1.
        near(
          await seen(),
          [110, 160].map((grey) => 1.5 * grey - 0.25 * 255),
        )
      })
    })
  })
})
