/**
 * How smoothly a sheet of 13,600 × 17,600 pixels moves in the window, what memory that takes, and how soon it is there.
 * Needs a build (`npm run build`) and Linux. Exits with 1 when a figure is over its bar.
 */
import { mkdtemp, realpath, rm } from 'node:fs/promises'
import { loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { openBrowser } from '../window/harness/browser.ts'
import { startProgram } from '../window/harness/program.ts'
import { CATEGORIES, frameWork, quantile } from './frame-work.ts'
import { HEIGHT, makeLargeSheet, WIDTH } from './large-sheet.ts'
import { megabytes, processesOf } from './page-memory.ts'

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
]
const SECONDS = 5
/** Milliseconds between two movements of the hand: a display's rate. */
const STEP = 1000 / 60

/** Runs in the page before anything else: tells when the sheet is asked for and when a picture of it is painted. */
const WATCH = `
  const fetched = window.fetch
  window.fetch = (where, how) => {
    if (String(where?.url ?? where).includes('show-sheet') && window.askedAt === undefined) window.askedAt = performance.now()
    return fetched(where, how)
  }
  const look = () => {
    if (document.querySelector('.scan-layer-picture') === null) requestAnimationFrame(look)
    else requestAnimationFrame(() => { window.paintedAt = performance.now() })
  }
  requestAnimationFrame(look)`

async function decodeTime(scan: string): Promise<number> {
  const start = performance.now()
  await sharp(scan, { limitInputPixels: false, sequentialRead: true }).raw().toBuffer()
  return performance.now() - start
}

/** Milliseconds from asking for the sheet until a picture of it was painted. */
async function untilPainted(page: Page): Promise<number> {
  for (let waited = 0; waited < 120_000; waited += 50) {
    const took = await page.evaluate('window.paintedAt - window.askedAt')
    if (Number.isFinite(took)) return Number(took)
    await page.waitForTimeout(50)
  }
  throw new Error('The sheet was not painted within two minutes.')
}

/** Moves for some seconds at the display's rate. */
async function keepOn(move: (t: number) => Promise<void>): Promise<void> {
  const start = performance.now()
  for (let k = 0; ; k++) {
    const t = (performance.now() - start) / 1000
    if (t > SECONDS) return
    await move(t)
    const rest = start + (k + 1) * STEP - performance.now()
    if (rest > 0) await new Promise((done) => setTimeout(done, rest))
  }
}

async function panAndZoom(page: Page): Promise<void> {
  const box = await page.getByRole('application').boundingBox()
  if (box === null) throw new Error('There is no sheet in sight.')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  for (let k = 0; k < 6; k++) await page.mouse.wheel(0, -200)
  await page.mouse.down()
  await keepOn(async (t) => {
    await page.mouse.move(x + 0.35 * box.width * Math.sin(2.2 * t), y + 0.35 * box.height * Math.sin(3.1 * t))
  })
  await page.mouse.up()
  await page.mouse.move(x, y)
  await keepOn(async (t) => {
    await page.mouse.wheel(0, Math.sin(2.5 * t) > 0 ? -24 : 24)
  })
}

/** The window by itself at the station where most is drawn over the sheet. */
async function toStation(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation').getByText(name, { exact: true }).click()
}

const folder = await realpath(await mkdtemp(join(tmpdir(), 'scantling-bench-')))
let over = false
const bar = (what: string, value: number, limit: number, unit: string): void => {
  const within = value <= limit
  over ||= !within
  console.log(
    `  ${what}: ${value.toFixed(1)} ${unit} (to be at most ${limit.toFixed(1)})${within ? '' : ' — over'}`,
  )
}
const browser = await openBrowser()
try {
  const job = join(folder, 'job')
  const scan = await makeLargeSheet(job)
  const decode = Math.min(await decodeTime(scan), await decodeTime(scan))
  const program = await startProgram({ folder: job }, folder)
  const context = await browser.newContext({
    viewport: { width: 1920, height: 1080 },
    reducedMotion: 'reduce',
  })
  const page = await context.newPage()
  await page.addInitScript(WATCH)
  await page.goto(program.address)
  const first = await untilPainted(page)
  await page.getByRole('region', { name: 'Work going on' }).waitFor({ state: 'detached', timeout: 300_000 })
  await toStation(page, 'Pick')
  await panAndZoom(page)
  const processes = await processesOf(page)
  console.log(`A sheet of ${WIDTH} × ${HEIGHT} pixels with some forty sizes on it:`)
  for (const size of SIZES) {
    await page.setViewportSize(size)
    await page.getByRole('button', { name: /^Whole sheet/ }).click()
    await browser.startTracing(page, { categories: CATEGORIES })
    await panAndZoom(page)
    const trace = await browser.stopTracing()
    const work = frameWork(trace, processes.page)
    const [clock, processor] = [work.map((frame) => frame.clock), work.map((frame) => frame.processor)]
    console.log(
      `  window ${size.width} × ${size.height}, ${work.length} frames in ${2 * SECONDS} s of dragging and wheeling; by the browser's trace, every task of the page's main thread counts`,
    )
    bar('main thread, median of frames', quantile(clock, 0.5), 8, 'ms')
    bar('main thread, 95th percentile', quantile(clock, 0.95), 16, 'ms')
    console.log(
      `    (by the clock, other programs included, of which ${loadavg()[0]?.toFixed(1)} wanted to run; of the processor's time it had ${quantile(processor, 0.5).toFixed(1)} ms and ${quantile(processor, 0.95).toFixed(1)} ms)`,
    )
  }
  const memory = await megabytes(processes.page)
  const beside = processes.graphics === undefined ? 0 : await megabytes(processes.graphics)
  await context.close()
  await program.end()
  bar('memory of the page', memory, 400, 'MB')
  console.log(
    `    (proportional set size of its process: script, decoded pictures, canvases, code; the process for graphics that all pages share has ${beside.toFixed(0)} MB)`,
  )
  bar('first picture on screen', first, 1.5 * decode, 'ms')
  console.log(
    `    (from asking for the sheet until it is painted, with no pictures kept; decoding the file takes ${decode.toFixed(0)} ms)`,
  )
} finally {
  await browser.close()
  await rm(folder, { recursive: true, force: true })
}
process.exitCode = over ? 1 : 0
