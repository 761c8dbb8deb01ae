import { readFile } from 'node:fs/promises'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { tableTabbed } from '../../src/core/handoff/table/table-tabbed.ts'
import { dimensionTable } from '../../src/core/ledger/table/dimension-table.ts'
import { readJobFolder } from '../../src/main/services/job-folder/read-job-folder.ts'
import { workshopJob } from '../main/fixtures/workshop-job.ts'
import { type AtTheBench, inHost } from './harness/at-the-bench.ts'
import { localLauncher } from './harness/local-launcher.ts'
import type { Person } from './harness/person.ts'
import { tableByCommand } from './harness/program.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'
import { oneOf } from './steps.ts'

const cellOf = ({ page }: Person, name: string, column: string) =>
  grid(page).locator(`[data-name="${name}"] [data-column="${column}"]`)

/** Waits until what was entered is on disk, and shown. */
async function allKept(page: Page): Promise<void> {
  await expect
    .poll(() => page.locator('[data-saved]').textContent(), { timeout: 15_000 })
    .toMatch(/^Saved \d/)
  await tableSettled(page)
}

/** The words of each page of a PDF, and its size in points. */
async function pagesOf(pdf: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(pdf) }).promise
  const pages = Array.from({ length: document.numPages }, async (_, k) => {
    const page = await document.getPage(k + 1)
    const { items } = await page.getTextContent()
    const words = items.flatMap((item) => ('str' in item ? [item.str] : [])).join(' ')
    return { size: page.view.slice(2), words: words.replace(/\s+/g, ' ') }
  })
  return Promise.all(pages)
}

/** Whether a text is there, wherever its lines were broken. */
const withoutSpaces = (text: string): string => text.replace(/\s+/g, '')

type Work = (at: AtTheBench, folder: string) => Promise<void>

/** Readings of the original are entered down their column, by an instrument that is defined there. */
const readings: Work = async ({ page, person }, folder) => {
  const found = async (name: string) =>
    (await readJobFolder(folder)).job.dimensions
      .find((one) => one.name === name)
      ?.evidence.filter(({ basis }) => basis === 'found')
  await tableSettled(page)
  await person.click(person.button('no instrument named, change the instrument'))
  await person.click(person.button('New instrument…'))
  await person.write('6 in dial caliper')
  await person.press('Tab')
  await person.write('0.001 in')
  await person.press('Tab')
  await person.write('0.002 in')
  await person.press('Enter')
  await person.button('by 6 in dial caliper, change the instrument').waitFor()
  const [instrument] = (await readJobFolder(folder)).job.instruments
  expect(instrument).toMatchObject({
    name: '6 in dial caliper',
    resolution: '0.001 in',
    limit: '0.002 in',
  })

  await cellOf(person, 'drum_length', 'original').dblclick()
  await person.write('6.01 6,02 6 1/64')
  await page.getByText('3 readings, mean 6.015" ±', { exact: false }).first().waitFor()
  await person.press('Enter')
  await person.write('3.01 30.1')
  await page.getByText("can't both be readings of one size", { exact: false }).waitFor()
  await person.press('Control+a')
  await person.write('3.01')
  await person.press('Tab')
  await page.getByRole('textbox', { name: /of drum_half$/ }).waitFor()
  await person.press('Escape')
  await allKept(page)
  expect(await found('drum_length')).toMatchObject([
    { readings: ['6.01', '6,02', '6 1/64'], instrument: instrument?.id },
  ])
  expect(await found('drum_half')).toMatchObject([{ readings: ['3.01'], instrument: instrument?.id }])
  expect(await cellOf(person, 'drum_length', 'original').textContent()).toMatch(/6\.015.* ± .*of 3$/)

  // What is written again replaces it, what is emptied is withdrawn.
  await cellOf(person, 'drum_length', 'original').dblclick()
  await person.press('Control+a')
  await person.write('6.02')
  await person.press('Enter')
  await person.press('Escape')
  await allKept(page)
  expect(await found('drum_length')).toMatchObject([{ readings: ['6.02'] }])
  await person.press('ArrowUp')
  await person.press('F2')
  await person.press('Delete')
  await person.press('Enter')
  await person.press('Escape')
  await allKept(page)
  expect(await cellOf(person, 'drum_length', 'original').textContent()).toBe('')
  expect(await found('drum_length')).toMatchObject([{ withdrawn: expect.any(String) }])
  for (let step = 0; step < 3; step++) {
    await person.press('Control+z')
    await allKept(page)
  }
  expect(await found('drum_length')).toMatchObject([{ readings: ['6.01', '6,02', '6 1/64'] }])
  expect(await found('drum_half')).toEqual([])

  // What is typed on a cell begins a new line of readings.
  await cellOf(person, 'drum_half', 'original').click()
  await grid(page).focus()
  await person.write('3.02 3.03')
  await person.press('Enter')
  await allKept(page)
  expect(await found('drum_half')).toMatchObject([{ readings: ['3.02', '3.03'] }])
}

/** Dimensions without a pick, a formula with its value under it before Enter. */
const newDimensions: Work = async ({ page, person }, folder) => {
  const dimensions = async () => (await readJobFolder(folder)).job.dimensions
  const before = (await dimensions()).length
  await tableSettled(page)
  await grid(page).focus()
  await person.press('Insert')
  const form = page.getByRole('form', { name: 'New dimension' })
  await form.waitFor()
  await person.write('Hood, height')
  await person.click(oneOf(page, 'What says how large it is', 'By formula'))
  await person.click(person.field('Formula over the names of dimensions'))
  await person.write('drum_length +')
  await form.locator('.draft-verdict-wrong').waitFor()
  await person.write(' 1/4"')
  await expect.poll(() => form.locator('[data-formula-value]').textContent()).toMatch(/= .*6 1\/4"/)
  await person.press('Enter')
  await page.getByRole('article', { name: 'Card of hood_height' }).waitFor()
  expect((await dimensions()).at(-1)).toMatchObject({
    name: 'hood_height',
    label: 'Hood, height',
    evidence: [{ basis: 'derived', formula: 'drum_length + 1/4"' }],
  })

  // Where it stands, too: what it comes to is said before it is kept.
  await tableSettled(page)
  const figure = grid(page).locator('[data-name="hood_height"] [data-column="figure"]')
  await figure.dblclick()
  await person.press('End')
  await person.write(' + 1"')
  await expect.poll(() => page.locator('[data-formula-value]').textContent()).toMatch(/= .*7 1\/4"/)
  await person.press('Enter')
  await expect
    .poll(async () => (await dimensions()).at(-1)?.evidence)
    .toMatchObject([{ formula: 'drum_length + 1/4" + 1"' }])
  await person.press('Control+z')
  await expect
    .poll(async () => (await dimensions()).at(-1)?.evidence)
    .toMatchObject([{ formula: 'drum_length + 1/4"' }])
  await person.press('Control+z')
  await expect.poll(async () => (await dimensions()).length).toBe(before)

  // By readings alone, one line of them.
  await person.click(person.button('New dimension…'))
  await form.waitFor()
  await person.write('Hood, rim')
  await person.click(oneOf(page, 'What says how large it is', 'Measured'))
  await person.click(person.field('Readings on the original'))
  await person.write('2 1/2 2 33/64')
  await person.press('Enter')
  await page.getByRole('article', { name: 'Card of hood_rim' }).waitFor()
  expect((await dimensions()).at(-1)).toMatchObject({
    name: 'hood_rim',
    evidence: [{ basis: 'found', readings: ['2 1/2', '2 33/64'] }],
  })

  // Of a figured size, on its own form.
  await person.station('Scale')
  await person.click(person.button(/12"/).first())
  await person.click(person.button('A dimension too'))
  await page.getByRole('form', { name: 'New dimension' }).waitFor()
  await person.write('Drum, between the rims')
  await person.press('Enter')
  await page.getByRole('article', { name: 'Card of drum_between_the_rims' }).waitFor()
  expect((await readJobFolder(folder)).job.dimensions.at(-1)).toMatchObject({
    kind: 'length',
    evidence: [
      { basis: 'printed', text: '12"', sheet: 'S1' },
      { basis: 'scaled', view: 'V1', measure: 'distance', marks: ['M1', 'M2'] },
    ],
  })
}

/** A file as the command line has it, to the byte; a copy for a spreadsheet; every row on paper. */
const takeOut: Work = async ({ page, person }, folder) => {
  const { job } = await readJobFolder(folder)
  await tableSettled(page)
  const take = async (way: string): Promise<void> => {
    await person.click(person.button(/^Take the table out/))
    await person.click(page.getByRole('menuitem', { name: way }))
  }
  await person.click(oneOf(page, 'Figures in fractions or decimals', '.375'))
  await tableSettled(page)
  const downloaded = page.waitForEvent('download')
  await take('CSV file…')
  const file = await downloaded
  expect(file.suggestedFilename()).toBe('Drum-of-the-chain-ferry-table.csv')
  expect((await readFile(await file.path())).toString()).toBe(
    await tableByCommand(folder, '--format', 'csv', '--figures', 'decimals'),
  )

  // Of the rows that are shown, in decimals as they are looked at.
  await page.getByRole('searchbox', { name: 'Find dimensions' }).fill('between the rims')
  await take('Copy the rows')
  await page.getByText(`1 of ${job.dimensions.length} rows are copied`, { exact: false }).waitFor()
  await page.context().grantPermissions(['clipboard-read'])
  const copied = await page.evaluate(() => navigator.clipboard.readText())
  const table = dimensionTable(job, { figuresAs: 'decimals' })
  expect(copied).toBe(
    tableTabbed(
      table,
      table.rows.filter(({ name }) => name === 'drum_between_the_rims'),
    ),
  )

  const pages = await pagesOf(await page.pdf({ preferCSSPageSize: true }))
  // A4 on its side, ISO 216, in points.
  for (const { size } of pages) {
    expect(size[0]).toBeCloseTo((297 / 25.4) * 72, -0.5)
    expect(size[1]).toBeCloseTo((210 / 25.4) * 72, -0.5)
  }
  expect(pages.length).toBeGreaterThan(2)
  const all = withoutSpaces(pages.map(({ words }) => words).join(' '))
  for (const { label, name, why } of table.rows) {
    for (const text of [label, name, why]) expect(all).toContain(withoutSpaces(text))
  }
  // By the word of the window, not by its name in files.
  expect(all).toMatch(/measured(?:agreed|unchecked|disputed)/)
  expect(all).not.toMatch(/found(?:agreed|unchecked|disputed)/)
  for (const caution of table.cautions) expect(all).toContain(withoutSpaces(caution))
  expect(all).toContain(withoutSpaces('How the views are calibrated'))
  // Each page that has rows says again what stands in its columns.
  for (const { words } of pages.filter(({ words }) => words.includes('hole_'))) {
    expect(words).toContain('figure ± U (95 %)')
  }
  // What is for the screen alone is not printed.
  expect(all).not.toContain(withoutSpaces('Whole sheet'))
}

const ROWS = 50

describe('A day at the table', () => {
  inHost(localLauncher(), (session) => {
    it('enters readings, makes dimensions without a pick, and takes all of it out of the window', async () => {
      const { folder } = await workshopJob((job) => ({
        ...job,
        dimensions: [
          ...job.dimensions,
          ...Array.from({ length: ROWS }, (_, k) => ({
            name: `hole_${k}`,
            label: `Flange, hole ${k}, "drilled"`,
            kind: 'length' as const,
            evidence: [{ id: 'p1', basis: 'printed' as const, text: `${k + 1} 3/8"` }],
          })),
        ],
      }))
      await session({ opens: { folder }, scheme: 'dark' }, async (at) => {
        await readings(at, folder)
        await newDimensions(at, folder)
        await takeOut(at, folder)
      })
    })
  })
})
