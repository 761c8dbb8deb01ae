import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import type { Edit } from '../../../src/core/job/edits/edit.ts'
import type { FigureReading } from '../../../src/core/reading/figure-reading.ts'
import { smallSheet } from '../../core/reading/drawn/sheet/small-sheet.ts'
import { type BenchWithScan, benchWithScan } from '../fixtures/bench-with-scan.ts'

const BY = 'A. Rivet'

/** Standard deviation of what puts the scan out of focus, pixels, of digits 24 pixels high: so that there is something to learn. */
const BLUR = 1.8

/** What somebody says that a figure is, at so many places a pixel apart: as though it stood on the sheet so often. */
const FIGURES = 2

async function take(under: BenchWithScan, text: string, [x, y, width, height]: FigureReading['box']) {
  const edits = Array.from(
    { length: FIGURES },
    (_, i): Edit => ({
      do: 'add-dimension',
      item: {
        name: `d${i}`,
        label: `Figure ${i}`,
        kind: 'length',
        evidence: [
          { id: 'p1', basis: 'printed', text, sheet: 'S1', box: [x - i, y - i, width + i, height + 2 * i] },
        ],
      },
    }),
  )
  await under.ask('edit', { edit: { do: 'several', name: 'take figures', edits }, by: BY })
}

async function correct(under: BenchWithScan, text: string) {
  const edits = Array.from(
    { length: FIGURES },
    (_, i): Edit => ({
      do: 'change-evidence',
      dimension: `d${i}`,
      id: 'p1',
      set: { text },
    }),
  )
  await under.ask('edit', { edit: { do: 'several', name: 'correct figures', edits }, by: BY })
}

/** How likely a reading has it that a figure is written there. */
const likely = ({ text, probability, alternatives }: FigureReading, of: string): number =>
  text === of ? probability : (alternatives.find((other) => other.text === of)?.probability ?? 0)

describe('a sheet is read with its hand', () => {
  test('once figures of it are taken whose text goes with their strokes, and not by one that does not', async () => {
    const { picture, figures } = await smallSheet(5, 'Patrick Hand')
    const { width, height } = picture
    const raw = { width, height, channels: 1 } as const
    const draw = (path: string) =>
      sharp(picture.data, { raw }).blur(BLUR).toColourspace('b-w').png().toFile(path)
    const under = await benchWithScan(draw, 'sheet.png', {})
    await under.open()
    const figure = figures.find(({ written, frame }) => written.endsWith('°') && frame.angle === 0)
    if (figure === undefined) throw new Error('The sheet has no angle that is written level')
    const [x, y, wide, high] = figure.frame.box
    const box = { x: x - 4, y: y - 4, width: wide + 8, height: high + 8 }
    const read = () => under.ask('read-figure', { sheet: 'S1', box })
    const hand = async () => (await under.ask('readings', { sheet: 'S1' })).hand

    const before = await read()
    expect(await hand()).toEqual({
      on: true,
      known: 0,
      sentence:
        'Nothing is known of the hand of this sheet yet: each figure that you take shows how it writes.',
    })
    await take(under, '214 MM', before.box)
    expect((await hand()).sentence).toBe(
      'What is read next is read with the hand of the 2 figures taken on this sheet.',
    )
    expect(await read()).toEqual(before)
    expect(await hand()).toEqual({
      on: true,
      known: FIGURES,
      sentence:
        'The 2 figures taken on this sheet do not make its hand easier to read so far: it is read as any other.',
    })

    await correct(under, figure.text)
    const after = await read()
    expect(likely(after, figure.text)).toBeGreaterThan(likely(before, figure.text))
    expect((await hand()).sentence).toBe('Reads with the hand of 2 figures taken on this sheet.')
  })
})
