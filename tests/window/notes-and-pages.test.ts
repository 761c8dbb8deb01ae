import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../src/core/job/model/types.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { shortcomings } from '../core/handoff/annotations/out/required-properties.ts'
import { drawSetOfSheets } from './fixtures/set-of-sheets.ts'
import { inEachHost } from './harness/at-the-bench.ts'
import { pressBy, toPart } from './harness/by-keyboard.ts'
import type { Person } from './harness/person.ts'
import { placeOf } from './harness/sheet-hand.ts'
import { type Found, violations } from './harness/violations.ts'
import { desk, onSheet, pagesSeen, sheetReady } from './steps.ts'

const BY_KEYS = 'Hole drilled off the centre line.'
const BY_MOUSE = 'Stain over the corner: what does it hide?'

const dialog = (page: Page, name: string | RegExp): Locator => page.getByRole('dialog', { name })
const notes = (page: Page): Locator => page.getByRole('list', { name: 'Notes' })

/** Begins a job with a scan of several pages, and says which of them are wanted. */
async function begin(person: Person, scan: string, title: string, pages: string): Promise<Found[]> {
  const { page } = person
  await person.hand(scan, () => person.click(person.button('Choose a scan…')))
  await person.fill(person.field('What the job is called'), title)
  await person.fill(person.field('Your name'), 'A. Rivet')
  await person.press('Enter')
  const asked = dialog(page, /^Pages of/)
  // Each page is seen before one is chosen.
  await pagesSeen(page, 3)
  const found = await violations(page, 'choosing pages')
  await person.fill(asked.getByRole('textbox', { name: 'Pages' }), pages)
  await person.click(asked.getByRole('button', { name: 'Bring in', exact: true }))
  await asked.waitFor({ state: 'detached' })
  await sheetReady(page)
  return found
}

/** A note on what the cross goes round, by keys alone. */
async function noteByKeys(person: Person, text: string): Promise<void> {
  const { page } = person
  await toPart(person, desk(page))
  await pressBy(person, person.button('Write a note'))
  // The tool is taken up, and the keyboard goes to the sheet, a frame later.
  await onSheet(page)
  for (const [across, down] of [
    ['ArrowLeft', 'ArrowUp'],
    ['ArrowRight', 'ArrowDown'],
  ] as const) {
    await person.press(`Control+Shift+${across}`, 1)
    await person.press(`Control+Shift+${down}`, 1)
    await person.press('Enter')
  }
  const form = page.getByRole('form', { name: 'Note' })
  await form.waitFor()
  await person.write(text)
  await pressBy(person, form.getByRole('button', { name: 'Keep this note' }))
  await form.waitFor({ state: 'detached' })
}

/** A note on a region that is dragged from corner to corner, in pixels of the scan, with the tool that is still in hand. */
async function noteByMouse(
  person: Person,
  text: string,
  from: readonly [number, number],
  to: readonly [number, number],
): Promise<void> {
  const { page } = person
  await onSheet(page)
  await person.press('w')
  const [begins, ends] = [await placeOf(page, from), await placeOf(page, to)]
  await page.mouse.move(...begins)
  await page.mouse.down()
  await page.mouse.move(...ends, { steps: 5 })
  await page.mouse.up()
  const form = page.getByRole('form', { name: 'Note' })
  await form.waitFor()
  await person.write(text)
  await person.click(form.getByRole('button', { name: 'Keep this note' }))
  await form.waitFor({ state: 'detached' })
}

async function jobCalled(home: string, title: string): Promise<Job> {
  for (const name of await readdir(join(home, 'jobs'))) {
    const { job } = await readJobFolder(join(home, 'jobs', name))
    if (job.title === title) return job
  }
  throw new Error(`No job is called ${title}.`)
}

/** What the notes of a job say, whoever's ids they have. */
const said = ({ notes: all, sheets, people }: Job) =>
  all.map(({ text, outline, sheet, by, at }) => ({
    text,
    outline,
    page: sheets.find(({ id }) => id === sheet)?.scan.page,
    by: people.find(({ id }) => id === by)?.name,
    at,
  }))

describe('An archivist brings in pages of a scan and notes what is on them', () => {
  inEachHost((session) => {
    it('and another job takes the notes over', async () => {
      await session({ opens: 'start' }, async ({ page, person, home }) => {
        const scan = await drawSetOfSheets(join(home, 'valve-chest.tif'), 3)
        const found = await begin(person, scan, 'Valve chest', '1, 3')
        const first = await jobCalled(home, 'Valve chest')
        expect(
          first.sheets.map(({ scan: { page: of, width, height, dpi } }) => [of, width, height, dpi]),
        ).toEqual([
          [1, 1200, 900, 300],
          [3, 1200, 900, 300],
        ])
        expect(await readFile(join(home, 'jobs', 'Valve chest', 'scans', 'valve-chest.tif'))).toEqual(
          await readFile(scan),
        )

        await noteByKeys(person, BY_KEYS)
        await noteByMouse(person, BY_MOUSE, [900, 100], [1100, 220])
        await onSheet(page)
        await person.press('Escape')
        found.push(...(await violations(page, 'the card of a note')))

        await person.click(person.button(/^Notes \(2\)$/))
        await notes(page).getByRole('button').nth(1).waitFor()
        await person.fill(person.field('Find in notes'), 'stain hide')
        expect(await notes(page).getByRole('button').allInnerTexts()).toEqual([
          expect.stringContaining(BY_MOUSE),
        ])
        await person.fill(person.field('Find in notes'), 'rivet')
        expect(await notes(page).getByRole('button').count()).toBe(2)
        await person.fill(person.field('Find in notes'), ' ')
        found.push(...(await violations(page, 'the list of notes')))

        const kept = await jobCalled(home, 'Valve chest')
        const [byKeys, byMouse] = said(kept)
        expect(byKeys).toMatchObject({ text: BY_KEYS, page: 1, by: 'A. Rivet' })
        expect(byMouse).toMatchObject({ text: BY_MOUSE, page: 1, by: 'A. Rivet' })
        const corner = byMouse?.outline[0] ?? [0, 0]
        expect(Math.hypot(corner[0] - 900, corner[1] - 100)).toBeLessThan(3)

        const handed = page.waitForEvent('download')
        await person.click(person.button('Hand notes on'))
        const file = join(home, (await handed).suggestedFilename())
        await (await handed).saveAs(file)
        expect(shortcomings(JSON.parse(await readFile(file, 'utf8')))).toEqual([])

        await person.click(person.button('Close this job'))
        await begin(person, scan, 'Valve chest again', '1-3')
        await person.click(person.button(/^Notes \(0\)$/))
        await person.hand(file, () => person.click(person.button('Bring notes in…')))
        const brought = dialog(page, /^Notes of/)
        await brought.getByText('2 notes would be added.').waitFor()
        found.push(...(await violations(page, 'bringing notes in')))
        await person.click(brought.getByRole('button', { name: 'Bring in' }))
        await person.button(/^Notes \(2\)$/).waitFor()
        expect(said(await jobCalled(home, 'Valve chest again'))).toEqual(said(kept))

        await person.press('Control+z')
        await person.button(/^Notes \(0\)$/).waitFor()
        await person.click(person.button('Size limits…'))
        await dialog(page, 'Limits').waitFor()
        found.push(...(await violations(page, 'limits')))
        await person.press('Escape')
        expect(found).toEqual([])
      })
    })
  })
})
