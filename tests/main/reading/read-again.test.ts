import { join } from 'node:path'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import type { SheetReadings } from '../../../src/contract/readings.ts'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import type { FigureReading } from '../../../src/core/reading/figure-reading.ts'
import { aWorkbench, type BenchUnderTest } from '../fixtures/a-workbench.ts'
import { type BenchWithScan, benchWithScan } from '../fixtures/bench-with-scan.ts'

const BY = 'A. Rivet'

/**
 * Six boxes a sheet, 40 pixels apart from 10 on, of which the first two read clearly; how it reads is not tried here.
 * @param looks known figures that are looked at in one order
 */
const reader = (looks: number) => ({
  path: join(import.meta.dirname, 'fixtures', 'noting-reader.mjs'),
  args: ['6', '0', 'none', '60', String(looks)],
})

const standIn = reader(99)

const plain = { create: { width: 900, height: 600, channels: 3, background: '#fff' } } as const

/** The sheet once nothing more is read of it. */
async function over(under: BenchUnderTest): Promise<SheetReadings> {
  for (;;) {
    const now = await under.ask('readings', { sheet: 'S1' })
    if (now.progress.state !== 'reading') return now
    await new Promise((resolve) => setTimeout(resolve, 10))
  }
}

async function openSheet(figureProgram = standIn): Promise<BenchWithScan> {
  const draw = (path: string) => sharp(plain).png().toFile(path)
  const under = await benchWithScan(draw, 'sheet.png', { figureProgram })
  await under.open()
  return under
}

async function readSheet(): Promise<BenchWithScan> {
  const under = await openSheet()
  await under.ask('read-sheet', { sheet: 'S1' })
  await over(under)
  return under
}

let named = 0

/** Takes figures that stand far below all boxes, unless another box is given. */
async function take(
  under: BenchUnderTest,
  texts: readonly string[],
  box?: FigureReading['box'],
): Promise<void> {
  const edits = texts.map(
    (text, i): Edit => ({
      do: 'add-dimension',
      item: {
        name: `d${++named}`,
        label: `Figure ${named}`,
        kind: 'length',
        evidence: [
          {
            id: 'p1',
            basis: 'printed',
            text,
            sheet: 'S1',
            box: box === undefined ? [20 + 60 * i, 400 + named, 40, 20] : [...box],
          },
        ],
      },
    }),
  )
  await under.ask('edit', { edit: { do: 'several', name: 'take figures', edits }, by: BY })
}

/** By which known figures each figure of the sheet was read, by its number. */
const readBy = ({ figures }: SheetReadings): Record<number, string> =>
  Object.fromEntries(figures.map(({ id, reading }) => [id, reading.asRead.split(' ').slice(2).join(' ')]))

const PLAIN = { 0: '', 1: '', 2: '', 3: '', 4: '', 5: '' }

describe('a sheet that was read', () => {
  test('is read again once five more of its figures are known, but for what is clear, taken or dismissed', async () => {
    const under = await readSheet()
    const { figures } = await over(under)
    const boxOf = (id: number) => figures.find((one) => one.id === id)?.reading.box ?? [0, 0, 1, 1]
    await under.ask('edit', {
      edit: { do: 'dismiss-figure', sheet: 'S1', item: { box: [...boxOf(3)] } },
      by: BY,
    })
    await take(under, ['4'], boxOf(4))
    await take(under, ['1', '2', '3'])
    expect(readBy(await over(under))).toEqual(PLAIN)
    const from = under.events.length
    await take(under, ['5'])
    const after = await over(under)
    expect(readBy(after)).toEqual({ ...PLAIN, 2: '5 3 2 1 4', 5: '5 3 2 1 4' })
    expect(after.progress).toMatchObject({ state: 'ready', done: 6, of: 6 })
    expect(after.hand.sentence).toBe('Reads with the hand of 5 figures taken on this sheet.')
    const told = under.events.slice(from).flatMap((event) => (event.kind === 'readings' ? [event.news] : []))
    expect(told.flatMap((news) => news.figures.map(({ id }) => id)).sort()).toEqual([2, 5])
    expect(told.map(({ progress }) => progress.sentence)).toContain(
      'More is known of the hand by now: 2 doubtful figures to be read again.',
    )

    // Another time it is known by which hand each was read: one figure more is not worth the time.
    await under.bench.close()
    const again = await aWorkbench({ places: under.places, figureProgram: standIn })
    await again.bench.openFolder(under.folder)
    expect(await over(again)).toMatchObject({ figures: after.figures, progress: { state: 'ready' } })
    await take(again, ['6'])
    expect((await over(again)).figures).toEqual(after.figures)
    // Five others make another hand of it.
    for (let step = 0; step < 2; step++) await again.ask('undo', { by: BY })
    await take(again, ['7', '8', '9', '10', '11'])
    expect(readBy(await over(again))[2]).toBe('11 10 9 8 7 3 2 1 4')
  })

  test('is read without its hand where a person says so, and with it when they say so again', async () => {
    const under = await readSheet()
    const off = await under.ask('read-with-hand', { sheet: 'S1', on: false })
    expect(off.hand).toMatchObject({ on: false, known: 0 })
    await take(under, ['1', '2', '3', '4', '5'])
    const without = await over(under)
    expect(readBy(without)).toEqual(PLAIN)
    expect(without.hand.sentence).toBe('Reads without the hand of the 5 figures taken on this sheet.')
    const box = { x: 300, y: 300, width: 40, height: 20 }
    expect((await under.ask('read-figure', { sheet: 'S1', box })).asRead).toMatch(/^\d+ in$/)
    await under.ask('read-with-hand', { sheet: 'S1', on: true })
    expect(readBy(await over(under))).toEqual({
      ...PLAIN,
      2: '5 4 3 2 1',
      3: '5 4 3 2 1',
      4: '5 4 3 2 1',
      5: '5 4 3 2 1',
    })
    expect((await under.ask('read-figure', { sheet: 'S1', box })).asRead).toMatch(/^\d+ in 5 4 3 2 1$/)
  })

  test('by what was known of its hand at first is read again by more of it, until hardly anything is missing', async () => {
    const under = await openSheet(reader(1))
    const texts = Array.from({ length: 12 }, (_, i) => String(i + 1))
    await take(under, texts)
    await under.ask('read-sheet', { sheet: 'S1' })
    const { figures, progress } = await over(under)
    expect(progress).toMatchObject({ state: 'ready', done: 6, of: 6 })
    const doubtful = figures.filter(({ reading }) => !reading.clear)
    expect(doubtful).toHaveLength(4)
    for (const { reading } of doubtful)
      expect(reading.asRead.split(' ').slice(2).length).toBeGreaterThan(texts.length - 5)
  })
})
