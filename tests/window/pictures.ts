/** Makes the pictures of the window that the documents show: `npm run pictures`. The program must be built. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { drawSetOfSheets } from './fixtures/set-of-sheets.ts'
import { knownAs } from './harness/known-as.ts'
import type { Launcher, OpenedWindow, WindowSize } from './harness/launcher.ts'
import { localLauncher } from './harness/local-launcher.ts'
import { Person } from './harness/person.ts'
import { placeOf } from './harness/sheet-hand.ts'
import { bringRow, grid, tableSettled } from './harness/table-in-window.ts'
import { desk, oneOf, pagesSeen, sheetReady } from './steps.ts'

const FOLDER = 'docs/pictures/window'
const SIZES: readonly WindowSize[] = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
]
const SCHEMES = ['light', 'dark'] as const
/** So that the pages that show them stay light. */
const MOST_BYTES = 200 * 1024

type Scheme = (typeof SCHEMES)[number]

const STATIONS = [
  ['Sheet', 'sheet'],
  ['Scale', 'scale'],
  ['Pick', 'pick'],
  ['Read', 'read'],
] as const

/** A rim of the foot flange's bolt holes on the sample's sheet, pixels. */
const RIM = [2388, 1927] as const
/** With two more places round it. */
const ROUND_IT = [RIM, [2428, 1889], [2470, 1931]] as const

await mkdir(FOLDER, { recursive: true })
const launcher = localLauncher()
try {
  for (const size of SIZES) {
    for (const scheme of SCHEMES) {
      await withWindow(launcher, 'start', size, scheme, startPage)
      await withWindow(launcher, 'start', size, scheme, pages)
      await withWindow(launcher, 'sample', size, scheme, stations)
      await withWindow(launcher, 'sample', size, scheme, strokes)
    }
  }
} finally {
  await launcher.end()
}

type Save = (name: string) => Promise<void>

async function withWindow(
  on: Launcher,
  opens: 'start' | 'sample',
  size: WindowSize,
  scheme: Scheme,
  draw: (page: Page, save: Save, home: string) => Promise<void>,
): Promise<void> {
  const home = await mkdtemp(join(tmpdir(), 'scantling-pictures-'))
  let window: OpenedWindow | undefined
  try {
    // Who runs this is nobody's business.
    await knownAs(home, 'A. Rivet')
    window = await on.open({ opens, home, size, scheme })
    const { page } = window
    await draw(page, (name) => save(page, `${name}-${scheme}-${size.width}.jpg`), home)
    for (const fault of window.faults.found) console.error(fault)
    await window.close()
  } finally {
    await rm(home, { recursive: true, force: true })
  }
}

async function startPage(page: Page, save: Save): Promise<void> {
  await page.getByRole('button', { name: 'Open the sample' }).waitFor()
  await save('start')
}

/** A scan of several pages, brought in. */
async function pages(page: Page, save: Save, home: string): Promise<void> {
  const scan = await drawSetOfSheets(join(home, 'valve-chest.tif'), 3)
  const person = new Person(page)
  await person.hand(scan, () => person.click(person.button('Choose a scan…')))
  await person.fill(person.field('Your name'), 'A. Rivet')
  await person.press('Enter')
  await pagesSeen(page, 3)
  await save('pages')
}

async function stations(page: Page, save: Save): Promise<void> {
  await sheetReady(page)
  await tableSettled(page)
  const rail = page.getByRole('navigation', { name: 'Stations' })
  for (const [name, file] of STATIONS) {
    await rail.getByRole('button', { name: new RegExp(`\\b${name}$`) }).click()
    await save(file)
  }
  await rail.getByRole('button', { name: /Scale$/ }).click()
  await oneOf(page, 'Add a figured size', 'Two points').click()
  await overTheRim(page)
  await save('picking')
  await rail.getByRole('button', { name: /Pick$/ }).click()
  await (await bringRow(page, 'neck_height')).click()
  await page.getByRole('article', { name: 'Card of neck_height' }).waitFor()
  // Where the wheel left the rows, and which one is under the pointer, is chance.
  await grid(page).evaluate((rows) => rows.scrollTo(0, 15 * 26))
  await page.mouse.move(0, 0)
  await save('card')
}

/** A circle found on a stroke: before it is kept, and its card; and a note. */
async function strokes(page: Page, save: Save): Promise<void> {
  await sheetReady(page)
  await tableSettled(page)
  const person = new Person(page)
  await person.station('Pick')
  await person.click(oneOf(page, 'What to measure', 'Diameter'))
  await overTheRim(page)
  for (const at of ROUND_IT) await person.clickAt(await placeOf(page, at))
  await page
    .getByRole('form', { name: 'What was picked' })
    .getByText(/^Centre of a round stroke/)
    .waitFor()
  await person.write('Hole in foot flange, lower left')
  await save('fitted')
  await person.press('Enter')
  await page.getByRole('form', { name: 'What was picked' }).waitFor({ state: 'detached' })
  await tableSettled(page)
  const rim = await placeOf(page, ROUND_IT[1])
  await person.press('Escape')
  await person.clickAt(rim)
  await desk(page)
    .getByText(/^Circle /)
    .first()
    .waitFor()
  // Whether the new row was there to be brought in sight when it was chosen is chance.
  await grid(page).evaluate((rows) => rows.scrollTo(0, 0))
  await page.mouse.move(0, 0)
  await save('mark')
  await person.station('Sheet')
  await person.press('w')
  await person.click(person.button(/^Notes/))
  await page.getByRole('list', { name: 'Notes' }).getByRole('button').first().click()
  await page.mouse.move(0, 0)
  await save('note')
}

/** Goes close to the rim with the lens. */
async function overTheRim(page: Page): Promise<void> {
  await page.mouse.move(...(await placeOf(page, RIM)))
  for (let k = 0; k < 10; k++) await page.mouse.wheel(0, -120)
}

/** Saves the window once two pictures of it, some frames apart, are the same. */
async function save(page: Page, file: string): Promise<void> {
  let before = await page.screenshot()
  for (let k = 0; k < 50; k++) {
    await page.waitForTimeout(400)
    const now = await page.screenshot()
    if (now.equals(before)) break
    before = now
  }
  for (let quality = 90; quality >= 40; quality -= 5) {
    const jpeg = await sharp(before).jpeg({ quality, chromaSubsampling: '4:4:4', mozjpeg: true }).toBuffer()
    if (jpeg.length > MOST_BYTES && quality > 40) continue
    await writeFile(join(FOLDER, file), jpeg)
    console.log(`${file} ${Math.round(jpeg.length / 1024)} kB`)
    return
  }
}
