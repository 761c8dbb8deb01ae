/**
 * What it costs to have the sample's sheet read whole in the window, by the reader itself: until the first and the last
 * figure, how the window moves meanwhile, how soon a press of "Stop" is obeyed, and what memory that takes. Needs a build
 * (`npm run build`) and Linux. Exits with 1 when a figure is over its bar.
 */
import { cp, mkdtemp, readFile, realpath, rm, writeFile } from 'node:fs/promises'
import { availableParallelism, cpus, loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { openBrowser } from '../window/harness/browser.ts'
import { knownAs } from '../window/harness/known-as.ts'
import { type Program, startProgram } from '../window/harness/program.ts'
import { quantile } from './frame-work.ts'
import { megabytes, processesOf } from './page-memory.ts'
import { type ProcessBelow, processesBelow } from './processes-below.ts'
import {
  restartFrames,
  type Seen,
  type Standing,
  seenOfReading,
  untilSeen,
  watchReading,
} from './reading-watched.ts'

const SAMPLE = 'samples/deck-ventilator'
const SIZE = { width: 1440, height: 900 }
/** Rounds of stopping and going on. */
const ROUNDS = 3
/** Milliseconds that anything is waited for. */
const PATIENCE = 900_000
/** The sheet is at rest so long between two movements, ms. */
const REST = 2000
/** A frame that comes later than this is seen as a jerk, ms. Common practice, no source. */
const LATE = 50

/** Copies the sample, with nothing in it that says where its figures stand: all that is read is yet to be looked at. */
async function sampleToRead(folder: string): Promise<string> {
  const job = join(folder, 'job')
  await cp(SAMPLE, job, { recursive: true })
  const file = join(job, 'job.json')
  const text = await readFile(file, 'utf8')
  const withoutBoxes = JSON.parse(text, (_, value: unknown) => {
    if (typeof value !== 'object' || value === null) return value
    const { box, ...rest } = value as { box?: unknown; basis?: unknown }
    return rest.basis === 'printed' && box !== undefined ? rest : value
  }) as unknown
  await writeFile(file, JSON.stringify(withoutBoxes, null, 2))
  return job
}

interface AtRead {
  page: Page
  program: Program
  /** Script memory in use after its rubbish was collected, MB. */
  heap: () => Promise<number>
  close: () => Promise<void>
}

/** The window at the station Read, with the pictures of the sheet made. */
async function atRead(browser: Browser, folder: string): Promise<AtRead> {
  await knownAs(folder, 'A. Rivet')
  const program = await startProgram({ folder: await sampleToRead(folder) }, folder)
  const context = await browser.newContext({ viewport: SIZE, reducedMotion: 'reduce' })
  const page = await context.newPage()
  await watchReading(page)
  await page.goto(program.address)
  page.setDefaultTimeout(PATIENCE)
  await page.locator('[data-region="sheet"][data-pictures="ready"]').waitFor({ timeout: PATIENCE })
  await page.getByRole('region', { name: 'Work going on' }).waitFor({ state: 'detached', timeout: PATIENCE })
  await page.getByRole('navigation', { name: 'Stations' }).getByText('Read', { exact: true }).click()
  const session = await context.newCDPSession(page)
  await session.send('HeapProfiler.enable')
  const heap = async (): Promise<number> => {
    await session.send('HeapProfiler.collectGarbage')
    const { usedSize } = await session.send('Runtime.getHeapUsage')
    return usedSize / 2 ** 20
  }
  const close = async (): Promise<void> => {
    await context.close()
    await program.end()
  }
  return { page, program, heap, close }
}

/** Moves the sheet by the hand and the wheel for about a second, and lets it rest. */
async function moveAbout(page: Page): Promise<void> {
  const sheet = page.getByRole('application')
  const box = await sheet.boundingBox()
  if (box === null) throw new Error('There is no sheet in sight.')
  await sheet.focus()
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(x, y)
  for (let k = 0; k < 8; k++) await page.mouse.wheel(0, -60)
  await page.keyboard.down('Space')
  await page.mouse.down()
  for (const [dx, dy] of [
    [200, 60],
    [-200, -60],
    [0, 0],
  ] as const) {
    await page.mouse.move(x + dx, y + dy, { steps: 10 })
  }
  await page.mouse.up()
  await page.keyboard.up('Space')
  for (let k = 0; k < 8; k++) await page.mouse.wheel(0, 60)
  await page.waitForTimeout(REST)
}

const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('complementary').getByRole('button', { name }).click()

const pressed = ({ presses }: Seen, on: string): number =>
  presses.filter((one) => one.on.includes(on)).at(-1)?.at ?? Number.NaN

/** When a state was seen after a moment. */
const after =
  (is: Standing, moment: number) =>
  ({ states }: Seen): number | undefined =>
    states.find((state) => state.is === is && state.at >= moment)?.at

/** When there were more rows than so many. */
const moreRows =
  (than: number) =>
  ({ rows }: Seen): number | undefined =>
    rows.find(({ count }) => count > than)?.at

const readers = async ({ pid }: Program): Promise<ProcessBelow[]> =>
  (await processesBelow(pid)).filter(({ command }) => command.includes('figures.js'))

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0)

/** Megabytes of processes together; of one that has ended meanwhile none. */
const memoryOf = async (pids: readonly number[]): Promise<number> =>
  sum(await Promise.all(pids.map((pid) => megabytes(pid).catch(() => 0))))

/** Milliseconds until what reads had its last of the processor; looked at for a second and a half. */
async function untilIdle(program: Program): Promise<number> {
  const began = performance.now()
  let last = 0
  let before = sum((await readers(program)).map(({ processor }) => processor))
  while (performance.now() - began < 1500) {
    const now = sum((await readers(program)).map(({ processor }) => processor))
    if (now > before) last = performance.now() - began
    before = now
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
  return last
}

const table: string[][] = []
let over = false
/** @param most what it is to be at most, where that is said */
function tell(what: string, value: string, most?: { is: number; most: number; unit: string }): void {
  const isOver = most !== undefined && most.is > most.most
  over ||= isOver
  table.push([
    what,
    value,
    most === undefined ? '–' : `${most.most} ${most.unit}${isOver ? ' (**over**)' : ''}`,
  ])
}
const seconds = (milliseconds: number): string => `${(milliseconds / 1000).toFixed(2)} s`

/** Reads the whole sheet, which is moved about meanwhile. */
async function readWhole(browser: Browser, folder: string): Promise<void> {
  const { page, program, heap, close } = await atRead(browser, folder)
  for (let k = 0; k < 2; k++) await moveAbout(page)
  await restartFrames(page)
  for (let k = 0; k < 2; k++) await moveAbout(page)
  const alone = (await seenOfReading(page)).gaps
  const [script, host] = [await heap(), await megabytes(program.pid)]
  await restartFrames(page)
  await press(page, 'Read all figures')
  let [most, processor] = [0, 0]
  const begun = pressed(await seenOfReading(page), 'Read all figures')
  const ready = await untilSeen(page, after('ready', begun), PATIENCE, async () => {
    const now = await readers(program)
    most = Math.max(most, await memoryOf(now.map(({ pid }) => pid)))
    processor = Math.max(processor, sum(now.map((one) => one.processor)))
    await moveAbout(page)
  })
  const { gaps, rows } = await seenOfReading(page)
  processor = Math.max(processor, sum((await readers(program)).map((one) => one.processor)))
  const first = (rows.find(({ count }) => count > 0)?.at ?? Number.NaN) - begun
  tell('first figure in the list', seconds(first), { is: first / 1000, most: 5, unit: 's' })
  tell('last figure, all read', seconds(ready - begun), { is: (ready - begun) / 1000, most: 40, unit: 's' })
  tell('  processor of what reads', `${processor.toFixed(1)} s`)
  tell('  figures in the list', `${rows.at(-1)?.count ?? 0}`)
  for (const [when, of] of [
    ['while it reads', gaps],
    ['before', alone],
  ] as const) {
    const late = of.filter((gap) => gap > LATE)
    const share = `${((100 * late.length) / of.length).toFixed(1)} % of ${of.length} over ${LATE} ms`
    const longest = Math.max(...of)
    tell(
      `frames ${when}, sheet moved about: longest, 95th percentile`,
      `${longest.toFixed(0)} ms, ${quantile(of, 0.95).toFixed(0)} ms; ${share}`,
    )
  }
  const after_ = await heap()
  tell('script memory of the page before, after', `${script.toFixed(1)}, ${after_.toFixed(1)} MB`)
  await lookThrough(page)
  const looked = [await heap()]
  for (let k = 0; k < ROUNDS; k++) {
    await lookThrough(page)
    looked.push(await heap())
  }
  tell('  the list gone through, and each time again', `${looked.map((mb) => mb.toFixed(1)).join(', ')} MB`)
  const { page: pid } = await processesOf(page)
  tell("  the page's process (proportional set size)", `${(await megabytes(pid)).toFixed(0)} MB`)
  tell('host before, after', `${host.toFixed(0)}, ${(await megabytes(program.pid)).toFixed(0)} MB`)
  tell('what reads, all processes, at most', `${most.toFixed(0)} MB`)
  await close()
}

/** Goes down the list to its end and up again, and to another station and back. */
async function lookThrough(page: Page): Promise<void> {
  const list = page.getByRole('listbox', { name: 'Figures of this sheet' })
  const box = await page.getByRole('complementary').boundingBox()
  if (box === null) throw new Error('There is no desk.')
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  for (const way of [1, -1]) {
    for (let k = 0; k < 40; k++) {
      await page.mouse.wheel(0, way * 600)
      await page.waitForTimeout(30)
    }
  }
  const stations = page.getByRole('navigation', { name: 'Stations' })
  await stations.getByText('Pick', { exact: true }).click()
  await list.waitFor({ state: 'detached' })
  await stations.getByText('Read', { exact: true }).click()
  await list.waitFor()
}

/** Stops the reading and goes on with it, some times. */
async function stopAndGoOn(browser: Browser, folder: string): Promise<void> {
  const { page, program, heap, close } = await atRead(browser, folder)
  await press(page, 'Read all figures')
  await untilSeen(page, moreRows(0), PATIENCE)
  const [stops, idles, heaps, resumes]: [number[], number[], number[], number[]] = [[], [], [], []]
  for (let round = 0; round < ROUNDS; round++) {
    await press(page, 'Stop reading')
    const idle = await untilIdle(program)
    const at = pressed(await seenOfReading(page), 'Stop reading')
    stops.push((await untilSeen(page, after('stopped', at), PATIENCE)) - at)
    idles.push(idle)
    heaps.push(await heap())
    const { rows } = await seenOfReading(page)
    await press(page, 'Go on reading')
    const on = pressed(await seenOfReading(page), 'Go on reading')
    resumes.push((await untilSeen(page, moreRows(rows.at(-1)?.count ?? 0), PATIENCE)) - on)
  }
  await press(page, 'Stop reading')
  await page.getByRole('complementary').getByRole('button', { name: 'Go on reading' }).waitFor()
  heaps.push(await heap())
  const slowest = Math.max(...stops)
  const each = (of: readonly number[]): string => of.map((ms) => (ms / 1000).toFixed(2)).join(', ')
  tell('press of "Stop" to "Stopped" on the desk', `${each(stops)} s`, {
    is: slowest / 1000,
    most: 1,
    unit: 's',
  })
  const lastIdle = Math.max(...idles) / 1000
  tell('  until what reads is idle, from when the press was answered', `${each(idles)} s`, {
    is: lastIdle,
    most: 1,
    unit: 's',
  })
  tell('press of "Go on" to the next figure in the list', `${each(resumes)} s`)
  tell('script memory at each stop', `${heaps.map((mb) => mb.toFixed(1)).join(', ')} MB`)
  await close()
}

const folder = await realpath(await mkdtemp(join(tmpdir(), 'scantling-bench-')))
const browser = await openBrowser()
const processor = cpus()[0]?.model ?? 'a processor that does not say its name'
try {
  const load = loadavg()[0]?.toFixed(1)
  await readWhole(browser, await mkdtemp(join(folder, 'whole-')))
  await stopAndGoOn(browser, await mkdtemp(join(folder, 'stops-')))
  console.log(
    `The sample's sheet, 5200 × 3420 pixels at 300 to the inch, read in a window of ${SIZE.width} × ${SIZE.height}; ${availableParallelism()} processors (${processor}), of which ${load} were wanted before and ${loadavg()[0]?.toFixed(1)} after:\n`,
  )
  console.log('| | seen | at most |\n|---|---|---|')
  for (const row of table) console.log(`| ${row.join(' | ')} |`)
} finally {
  await browser.close()
  await rm(folder, { recursive: true, force: true })
}
process.exitCode = over ? 1 : 0
