import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { temporaryFolder } from '../main/fixtures/temporary-folder.ts'
import { drawPlate, type Punch, punchAt } from './fixtures/plate.ts'
import { plateJob } from './fixtures/plate-job.ts'
import { inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { closeUp } from './harness/sheet-hand.ts'
import { violations } from './harness/violations.ts'
import { desk, onSheet, sheetReady } from './steps.ts'

const LARGER = 1.25

/** The plate once more, scanned larger. @returns its path */
async function largerPlate(): Promise<string> {
  const folder = await temporaryFolder()
  const scan = await drawPlate(join(folder, 'plate.png'))
  const { width } = await sharp(scan).metadata()
  const larger = join(folder, 'larger.png')
  await sharp(scan)
    .resize({ width: Math.round(width * LARGER) })
    .withMetadata({ density: 300 })
    .png()
    .toFile(larger)
  return larger
}

async function bringIn(
  person: Person,
  path: string,
  by = person.button('Bring in a scan…').last(),
): Promise<void> {
  await person.hand(path, () => person.click(by))
  await desk(person.page).locator('.sheet-list-title', { hasText: 'larger' }).waitFor()
  await sheetReady(person.page)
}

/** Picks a place, exactly where it is said to be. */
async function pickAt(person: Person, [x, y]: readonly [number, number]): Promise<void> {
  const { page } = person
  await onSheet(page)
  await page.locator('[data-region="sheet"][data-pictures="ready"]').waitFor()
  await person.press('w')
  const place = await closeUp(page, [x, y], 12)
  await page.keyboard.down('Alt')
  await person.clickAt(place)
  await page.keyboard.up('Alt')
}

const titles = async (folder: string): Promise<string[]> =>
  (await readJobFolder(folder)).job.sheets.map(({ title }) => title)

/** Pastes a picture into the window, made of these bytes. */
const paste = (page: Page, bytes: readonly number[]): Promise<void> =>
  page.evaluate((all) => {
    const data = new DataTransfer()
    data.items.add(new File([new Uint8Array(all)], 'image.png', { type: 'image/png' }))
    window.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, cancelable: true }))
  }, bytes)

describe('The sheets of a job', () => {
  inHost(localLauncher(), (session) => {
    it('are moved by keys and by the grip, and have their pictures as the job is opened again', async () => {
      const folder = await plateJob()
      const home = await temporaryFolder()
      await session({ opens: { folder }, home }, async ({ page, person }) => {
        await sheetReady(page)
        await bringIn(person, await largerPlate())
        const rows = desk(page).locator('.sheet-list-row')
        await rows.nth(1).getByRole('button').focus()
        await person.press('Alt+ArrowUp')
        await expect.poll(() => titles(folder), { timeout: 15_000 }).toEqual(['larger', 'Plate'])
        await page.locator('.sheet-list-grip').first().dragTo(rows.nth(1))
        await expect.poll(() => titles(folder), { timeout: 15_000 }).toEqual(['Plate', 'larger'])
      })
      await session({ opens: { folder }, home }, async ({ page }) => {
        await expect
          .poll(
            () =>
              page.evaluate(() =>
                [...document.querySelectorAll<HTMLImageElement>('.sheet-list-picture img')].map(
                  ({ naturalWidth }) => naturalWidth > 0,
                ),
              ),
            { timeout: 15_000 },
          )
          .toEqual([true, true])
      })
    })

    it('say first what goes with one that is removed; one undo brings it all back', async () => {
      const folder = await plateJob()
      const before = (await readJobFolder(folder)).job
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.click(person.button('Remove this sheet…'))
        const asked = page.getByRole('dialog', { name: 'Remove Plate?' })
        await asked.getByText('1 view: Plan').waitFor()
        await asked.getByText('2 figured sizes').waitFor()
        await asked.getByText('3 marks').waitFor()
        await asked.getByText('1 piece of evidence of 1 dimension: width_over_punches').waitFor()
        expect(await violations(page, 'removing a sheet')).toEqual([])
        await person.click(asked.getByRole('button', { name: 'Remove it' }))
        await page.getByText('No sheet on the bench').waitFor()
        const gone = (await readJobFolder(folder)).job
        expect([gone.sheets, gone.views, gone.marks].map(({ length }) => length)).toEqual([0, 0, 0])
        expect(gone.dimensions[0]?.evidence).toEqual([])
        await person.press('Control+z')
        await desk(page).getByText('Plate', { exact: true }).first().waitFor()
        const { sheets, views, marks, dimensions } = (await readJobFolder(folder)).job
        expect({ sheets, views, marks, dimensions }).toEqual({
          sheets: before.sheets,
          views: before.views,
          marks: before.marks,
          dimensions: before.dimensions,
        })
      })
    })

    it('are given a better scan by places that are picked on both, as one edit', async () => {
      const folder = await plateJob()
      const before = (await readJobFolder(folder)).job
      await session({ opens: { folder } }, async ({ page, person }) => {
        await sheetReady(page)
        await person.click(person.button('A better scan…'))
        // Brought in from here it is the better one; else one that has nothing on it is chosen.
        await bringIn(person, await largerPlate(), person.button('Bring in a scan…').first())
        await page.getByText('0 of 3 places are picked on both.').waitFor()
        await person.click(person.button('Cancel').first())
        await person.click(person.button('A better scan…'))
        await person.click(page.getByRole('button', { name: /The better scan/ }))
        await person.click(page.getByRole('option', { name: 'larger' }))
        const punches: Punch[] = ['origin', 'along', 'across']
        for (const punch of punches) {
          const [x, y] = punchAt(punch)
          await page
            .getByRole('status')
            .getByText(/^\d of \d places are picked on both/)
            .or(page.getByText(/^\d of \d places are picked on both/))
            .first()
            .waitFor()
          await pickAt(person, [x, y])
          await page.getByText('Now pick the same place on larger.').waitFor()
          await pickAt(person, [LARGER * x, LARGER * y])
        }
        const places = page.getByRole('list', { name: 'Places on both pictures' })
        await places.getByText(/^Place 3: off by \d/).waitFor()
        expect(await violations(page, 'a better scan')).toEqual([])
        await person.click(person.button('Carry over'))
        await expect.poll(() => titles(folder), { timeout: 15_000 }).toEqual(['Plate'])
        const now = (await readJobFolder(folder)).job
        expect(now.sheets[0]?.scan.file).toBe('larger.png')
        for (const mark of before.marks) {
          const moved = now.marks.find(({ id }) => id === mark.id)
          if (mark.kind !== 'point' || moved?.kind !== 'point') throw new Error('The plate has points.')
          expect(Math.abs(moved.pixel[0] - LARGER * mark.pixel[0])).toBeLessThan(4 * moved.sigma)
          expect(Math.abs(moved.pixel[1] - LARGER * mark.pixel[1])).toBeLessThan(4 * moved.sigma)
          expect(moved.sigma).toBeGreaterThan(LARGER * mark.sigma)
        }
        await sheetReady(page)
        await person.press('Control+z')
        await expect.poll(() => titles(folder), { timeout: 15_000 }).toEqual(['Plate', 'larger'])
        expect((await readJobFolder(folder)).job.marks).toEqual(before.marks)
      })
    })
  })
})

describe('A picture that is pasted', () => {
  inHost(localLauncher(), (session) => {
    it('comes in as a sheet; where nothing can come in, it is said why', async () => {
      const folder = await plateJob()
      const bytes = [...(await readFile(await largerPlate()))]
      await session({ opens: { folder } }, async ({ page }) => {
        await sheetReady(page)
        await paste(page, bytes)
        await expect.poll(() => titles(folder), { timeout: 15_000 }).toEqual(['Plate', 'image'])
        await sheetReady(page)
        await session({ opens: { folder } }, async ({ page: onlooker }) => {
          await onlooker.locator('.frame-banners [data-read-only]').waitFor()
          await paste(onlooker, [0, 0, 0, 0])
          await onlooker.getByText('Nothing was brought in: this job is open read-only.').waitFor()
        })
      })
    })
  })
})
