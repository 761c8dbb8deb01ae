import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { drawFigure } from './drawn/draw-figure.ts'
import { reliability } from './judge/reliability.ts'
import { type MarkedAnswer, type Reader, scoreReader } from './judge/score-reader.ts'
import { tesseractReader } from './judge/tesseract-reader.ts'

/** Answers that state one probability, of which so many are right. */
const stating = (probability: number, answers: number, right: number): MarkedAnswer[] =>
  Array.from({ length: answers }, (_, i) => ({
    level: 'clean',
    lettering: 'Work Sans',
    kind: 'fraction',
    layout: 'stacked',
    lines: 1,
    height: 30,
    truth: '3/8"',
    answer: { text: i < right ? '3/8"' : '5/8"', probability, clear: false },
    right: i < right,
  }))

describe('the marks of a reader', () => {
  it('are without error of calibration where it is right as often as it says', () => {
    const { bands, ece } = reliability([...stating(0.75, 40, 30), ...stating(1, 10, 10)])
    expect(bands.map(({ answers, right }) => [answers, right])).toEqual([
      [40, 0.75],
      [10, 1],
    ])
    expect(ece).toBeCloseTo(0, 12)
  })

  it('weigh how far off it is by how often it says so', () => {
    // 60 of 100 say 0.9 and half are right, 40 say 0.25 and a quarter is: 0.6 × 0.4.
    expect(reliability([...stating(0.9, 60, 30), ...stating(0.25, 40, 10)]).ece).toBeCloseTo(0.24, 12)
  })

  it('are full for one that knows, none for one that never answers', async () => {
    const knowing: Reader = async ({ text }) => ({ text, probability: 1, clear: true })
    const silent: Reader = async () => ({ text: null, probability: 0, clear: false })
    expect((await scoreReader(knowing, 3, 10)).every(({ right }) => right)).toBe(true)
    expect((await scoreReader(silent, 3, 10)).some(({ right }) => right)).toBe(false)
  })
})

describe('Tesseract, which had no part in drawing them,', () => {
  let tesseract: Awaited<ReturnType<typeof tesseractReader>>
  beforeAll(async () => {
    tesseract = await tesseractReader()
  })
  afterAll(() => tesseract.end())

  it('reads plain numbers in printed letterings, turned any way', async () => {
    let right = 0
    const figures = ['1380', '96', '2745', '305', '618', '1927', '54', '871', '2406', '739']
    for (const [n, figure] of figures.entries()) {
      const drawn = await drawFigure({
        figure,
        unit: 'mm',
        lettering: n % 2 === 0 ? 'Work Sans' : 'Old Standard',
        height: 36,
        angle: [0, -90, 25, 90, -50][n % 5] ?? 0,
        layout: 'stacked',
        level: 'clean',
        seed: 20 + n,
      })
      if ((await tesseract.read(drawn)).text === drawn.text) right++
    }
    // Nine in ten of what any reader of print can read, whatever it is drawn on.
    expect(right).toBeGreaterThanOrEqual(9)
  })
})
