import { readdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import type { HostEvent } from '../../../src/contract/host-event.ts'
import type { FoundFigure, SheetReadings } from '../../../src/contract/readings.ts'
import { greysOfSvg } from '../../core/imaging/drawn/svg-picture.ts'
import { aWorkbench, type BenchUnderTest } from '../fixtures/a-workbench.ts'
import { type BenchWithScan, benchWithScan } from '../fixtures/bench-with-scan.ts'
import { ALL_KINDS } from '../scans/kinds/all-kinds.ts'

const WIDTH = 900
const HEIGHT = 600

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}"><rect width="100%" height="100%" fill="#fff"/><g font-family="sans-serif" font-size="40"><text x="100" y="100">14 3/8</text><text x="500" y="400">27</text></g></svg>`

async function drawSheet(path: string): Promise<void> {
  const { data, info } = await greysOfSvg(SVG)
  const { width, height, channels } = info
  await sharp(data, { raw: { width, height, channels } }).flatten().toColourspace('b-w').png().toFile(path)
}

/** A program that stands in for the one that reads. */
const standIn = (boxes: number, takes: number, deadly?: number) => ({
  path: join(import.meta.dirname, 'fixtures', 'noting-reader.mjs'),
  args: [boxes, takes, deadly ?? 'none'].map(String),
})

const BOX = { x: 90, y: 60, width: 140, height: 50 }

const newsOf = (events: readonly HostEvent[]): SheetReadings[] =>
  events.flatMap((event) => (event.kind === 'readings' ? [event.news] : []))

/** Waits until the reading of the sheet says that it is over. */
async function over(under: BenchUnderTest): Promise<SheetReadings> {
  for (;;) {
    const now = await under.ask('readings', { sheet: 'S1' })
    if (now.progress.state !== 'reading') return now
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
}

async function openSheet(figureProgram?: ReturnType<typeof standIn>): Promise<BenchWithScan> {
  const under = await benchWithScan(drawSheet, 'sheet.png', figureProgram ? { figureProgram } : {})
  await under.open()
  return under
}

describe('a figure in a box', () => {
  test('is read by the program itself, of the scan as it is and of its tiles alike', async () => {
    const under = await openSheet()
    const ofTheScan = await under.ask('read-figure', { sheet: 'S1', box: BOX })
    expect(ofTheScan.box).toHaveLength(4)
    expect((await under.shown()).exact).toBe(true)
    expect(await under.ask('read-figure', { sheet: 'S1', box: BOX })).toEqual(ofTheScan)
  })

  test.each(['JPEG 2000, grey.pdf', 'three pages II.tif'])('is read of %s', async (file) => {
    const kind = ALL_KINDS.find((one) => one.file === file)
    if (kind === undefined) throw new Error(`${file} is not among the kinds`)
    const write = async (path: string): Promise<void> => writeFile(path, (await kind.make()).bytes)
    const under = await benchWithScan(write, file, {})
    await under.open()
    const box = { x: 10, y: 5, width: 40, height: 20 }
    expect((await under.ask('read-figure', { sheet: 'S1', box })).box).toHaveLength(4)
  })

  test('is refused with a sentence where there can be none', async () => {
    const under = await openSheet(standIn(1, 0))
    const refused = (box: object) => under.refused('read-figure', { sheet: 'S1', box })
    expect(await refused({ ...BOX, x: 2000 })).toBe(
      'That box lies off the page, which has 900 × 600 pixels: put it round a figure on the page.',
    )
    expect(await refused({ ...BOX, height: 2 })).toContain('too small for a figure')
    expect(await refused({ ...BOX, width: 1e9 })).toContain('much larger than a figure')
    expect(await refused({ ...BOX, width: -4 })).toContain('in a form that is not understood')
    expect(await under.refused('read-figure', { sheet: 'S9', box: BOX })).toBe(
      'The job has no such sheet any more: choose another.',
    )
    expect(await under.refused('read-figure', { job: 'other', sheet: 'S1', box: BOX })).toContain(
      'no longer the one that is open',
    )
  })

  test('is read by the same process as the one before, and by another when that was killed', async () => {
    const under = await openSheet(standIn(1, 0))
    const pid = async (): Promise<number> =>
      Number.parseInt((await under.ask('read-figure', { sheet: 'S1', box: BOX })).asRead, 10)
    const first = await pid()
    expect(await pid()).toBe(first)
    process.kill(first, 'SIGKILL')
    expect(await pid()).not.toBe(first)
  })

  test('that ends what reads it is told of, and the next is read', async () => {
    const under = await openSheet(standIn(1, 0, 7))
    expect(await under.refused('read-figure', { sheet: 'S1', box: { ...BOX, x: 7 } })).toBe(
      "The figures of sheet.png can't be read because the process that reads them ended early (SIGKILL): try again.",
    )
    expect((await under.ask('read-figure', { sheet: 'S1', box: BOX })).asRead).toMatch(/^\d+ in$/)
  })
})

describe('the figures of a whole sheet', () => {
  test('come as they are read, each once, those nearest to what is looked at first', async () => {
    const under = await openSheet(standIn(8, 5))
    const begun = await under.ask('read-sheet', { sheet: 'S1', near: { x: 340, y: 20 } })
    expect(begun).toMatchObject({ sheet: 'S1', progress: { state: 'reading' }, figures: [] })
    const { progress, figures } = await over(under)
    expect(progress).toEqual({
      state: 'ready',
      done: 8,
      of: 8,
      sentence: 'The sheet was read: 8 figures seen, 0 of them clear.',
    })
    expect(figures.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
    const told = newsOf(under.events).flatMap((news) => news.figures)
    const ids = told.map(({ id }) => id)
    expect([...ids].sort()).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
    expect(ids.indexOf(7)).toBeLessThan(ids.indexOf(1))
    expect(newsOf(under.events).at(-1)?.progress).toEqual(progress)
  })

  test('are stopped within a second, and gone on with where they were, also another time', async () => {
    const under = await openSheet(standIn(12, 150))
    const heard = new Promise<FoundFigure[]>((resolve) => {
      under.bench.listen((event) => {
        if (event.kind === 'readings' && event.news.figures.length > 0) resolve(event.news.figures)
      })
    })
    await under.ask('read-sheet', { sheet: 'S1' })
    await heard
    const before = performance.now()
    const stopped = await under.ask('stop-reading', { sheet: 'S1' })
    expect(performance.now() - before).toBeLessThan(1000)
    expect(stopped.progress.state).toBe('stopped')
    expect(stopped.figures.length).toBeGreaterThan(0)
    expect(stopped.figures.length).toBeLessThan(12)
    expect(await readdir(join(under.folder))).not.toContain('readings')
    await under.bench.close()

    const { places } = under
    const again = await aWorkbench({ places, figureProgram: standIn(12, 0) })
    await again.bench.openFolder(under.folder)
    const kept = await again.ask('readings', { sheet: 'S1' })
    expect(kept.figures).toEqual(stopped.figures)
    expect(kept.progress).toMatchObject({ state: 'stopped', done: stopped.figures.length, of: 12 })
    await again.ask('read-sheet', { sheet: 'S1' })
    const { figures, progress } = await over(again)
    expect(progress).toMatchObject({ state: 'ready', done: 12 })
    expect(figures.filter(({ id }) => stopped.figures.some((one) => one.id === id))).toEqual(stopped.figures)
  })

  test('but for one that ends what reads it, are all read', async () => {
    const under = await openSheet(standIn(6, 0, 90))
    await under.ask('read-sheet', { sheet: 'S1' })
    const { progress, figures } = await over(under)
    expect(progress).toMatchObject({ state: 'ready', done: 6, of: 6 })
    expect(progress.sentence).toBe(
      'The sheet was read: 5 figures seen, 0 of them clear. 1 place could not be read.',
    )
    expect(figures.map(({ id }) => id)).toEqual([0, 1, 3, 4, 5])
  })

  test('are not what they were where a bare number means something else', async () => {
    const under = await openSheet(standIn(2, 0))
    await under.ask('read-sheet', { sheet: 'S1' })
    expect((await over(under)).progress.state).toBe('ready')
    await under.ask('edit', { edit: { do: 'describe', set: { unit: 'mm' } }, by: 'A. Rivet' })
    expect((await under.ask('readings', { sheet: 'S1' })).progress).toMatchObject({ state: 'unread', of: 0 })
    expect((await under.ask('read-figure', { sheet: 'S1', box: BOX })).asRead).toMatch(/ mm$/)
  })

  test('are refused with a sentence where the scan is gone', async () => {
    const under = await benchWithScan(drawSheet, 'sheet.png', { figureProgram: standIn(2, 0) })
    await rm(join(under.folder, 'scans', 'sheet.png'))
    await under.open()
    expect(await under.refused('read-sheet', { sheet: 'S1' })).toContain('The scan sheet.png')
  })

  test('are found and read by the program itself', async () => {
    const under = await openSheet()
    await under.ask('read-sheet', { sheet: 'S1' })
    const { progress } = await over(under)
    expect(progress.state).toBe('ready')
    expect(progress.done).toBe(progress.of)
    expect(progress.of).toBeGreaterThan(0)
  })
})
