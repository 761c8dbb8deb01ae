/**
 * What acts on a job of 1,000 dimensions take of the window's main thread: opening a card, a new name, undo, a reading.
 * Needs a build (`npm run build`). Exits with 1 when a figure is over its bar.
 */
import { createHash } from 'node:crypto'
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CDPSession, Page } from 'playwright-core'
import sharp from 'sharp'
import { writeJob } from '../../src/core/job/write-job.ts'
import { largeJob } from '../bench/large-job.ts'
import { openBrowser } from './harness/browser.ts'
import { knownAs } from './harness/known-as.ts'
import { Person } from './harness/person.ts'
import { startProgram } from './harness/program.ts'
import { grid, tableSettled } from './harness/table-in-window.ts'

const DIMENSIONS = 1000
/** Milliseconds of the main thread that an act may take, all tasks together. */
const BAR = 100
const ROUNDS = 7
/** Milliseconds after which nothing of an act is left to do. */
const REST = 400

/** A folder with a job of many dimensions and a plain scan of the size that it names. */
async function largeFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'scantling-bench-'))
  await mkdir(join(folder, 'scans'))
  const job = largeJob(DIMENSIONS)
  const [sheet] = job.sheets
  if (sheet === undefined) throw new RangeError('A large job has a sheet.')
  const { width, height, file } = sheet.scan
  const path = join(folder, 'scans', file)
  const background = { r: 235, g: 228, b: 210 }
  await sharp({ create: { width, height, channels: 3, background } })
    .png()
    .toFile(path)
  const sha256 = createHash('sha256')
    .update(await readFile(path))
    .digest('hex')
  const sheets = [{ ...sheet, scan: { ...sheet.scan, sha256 } }]
  await writeFile(join(folder, 'job.json'), writeJob({ ...job, sheets }))
  return folder
}

/** Seconds that the main thread of the page was busy so far. */
async function busy(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN
}

/** Runs in the page: keeps the longest task there was. */
function watchLongTasks(): void {
  Object.assign(window, { longest: 0 })
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) {
      const now = window as unknown as { longest: number }
      now.longest = Math.max(now.longest, duration)
    }
  }).observe({ type: 'longtask' })
}

const longestOf = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const now = window as unknown as { longest: number }
    const was = now.longest
    now.longest = 0
    return was
  })

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

const folder = await largeFolder()
const home = await mkdtemp(join(tmpdir(), 'scantling-bench-'))
// Else the first edit asks who is at work.
await knownAs(home, 'A. Rivet')
const program = await startProgram({ folder }, home)
const browser = await openBrowser()
const over: string[] = []
try {
  const page = await browser.newPage({ viewport: { width: 1600, height: 1000 } })
  await page.addInitScript(watchLongTasks)
  const session = await page.context().newCDPSession(page)
  // What the thread itself worked: on a busy machine it also waits.
  await session.send('Performance.enable', { timeDomain: 'threadTicks' })
  await page.goto(program.address)
  await page.locator('[data-region="sheet"][data-pictures="ready"]').waitFor({ timeout: 120_000 })
  await tableSettled(page)
  const person = new Person(page)
  const settled = async (): Promise<void> => {
    await page.waitForTimeout(50)
    await page
      .locator('[data-saved]')
      .getByText(/^(Saved|Nothing)/)
      .waitFor()
    await tableSettled(page)
    await page.waitForTimeout(REST)
  }
  const measured = new Map<string, { all: number[]; longest: number[] }>()
  const time = async (name: string, act: () => Promise<void>): Promise<void> => {
    await settled()
    await longestOf(page)
    const before = await busy(session)
    await act()
    await settled()
    const all = 1000 * ((await busy(session)) - before)
    const kept = measured.get(name) ?? { all: [], longest: [] }
    measured.set(name, kept)
    kept.all.push(all)
    kept.longest.push(await longestOf(page))
  }
  const cell = (row: string, column: string) =>
    grid(page).locator(`[data-name="${row}"] [data-column="${column}"]`)
  for (let round = 0; round < ROUNDS; round++) {
    const [row, other] = [`d${2 * (round % 4)}`, `d${2 * (round % 4) + 1}`]
    await cell(other, 'label').click()
    await time('nothing', async () => undefined)
    await time('another card', () => cell(row, 'label').click())
    await cell(row, 'name').dblclick()
    await person.press('Control+a')
    await person.write(`drum_${round}`)
    await time('a new name', () => person.press('Enter'))
    await time('undo', () => person.press('Control+z'))
    await cell(row, 'original').dblclick()
    await person.press('Control+a')
    await person.write('25.41 mm 25.43 mm')
    await time('readings', () => person.press('Enter'))
    await person.press('Escape')
    await time('undo of readings', () => person.press('Control+z'))
    await person.press('Escape')
    await time('a digit of readings', async () => {
      await grid(page).focus()
      await person.press('2')
    })
    await person.press('Escape')
  }
  console.log(`${DIMENSIONS} dimensions, load ${loadavg()[0]?.toFixed(1)}; milliseconds of the main thread`)
  for (const [name, { all, longest }] of measured) {
    const [usual, most] = [middle(all), Math.max(...all)]
    console.log(
      `${name.padEnd(20)} ${usual.toFixed(0).padStart(5)} in the middle, ${most.toFixed(0).padStart(5)} at most; longest task ${Math.max(...longest).toFixed(0)}`,
    )
    if (usual > BAR) over.push(name)
  }
} finally {
  await browser.close()
  await program.end()
  await rm(folder, { recursive: true, force: true })
  await rm(home, { recursive: true, force: true })
}
if (over.length > 0) {
  console.error(`Over ${BAR} ms: ${over.join(', ')}.`)
  process.exitCode = 1
}
