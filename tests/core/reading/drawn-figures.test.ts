import { createCanvas } from '@napi-rs/canvas'
import { describe, expect, it } from 'vitest'
import { parseFigure } from '../../../src/core/quantity/parse/parse-figure.ts'
import { dice } from './drawn/dice.ts'
import { drawFigure, standard } from './drawn/draw-figure.ts'
import { linear, type PlannedFigure } from './drawn/figure-parts.ts'
import { figureSet, SET_SIZE, setOrder } from './drawn/figure-set.ts'
import { faceOf, LETTERINGS } from './drawn/letterings.ts'
import { LEVELS } from './drawn/levels.ts'
import { drawSetFigure, setFigure } from './drawn/set-figure.ts'
import { drawSheet } from './drawn/sheet/draw-sheet.ts'
import { FIGURE_KINDS } from './drawn/some-figure.ts'
import { uprightCrop } from './drawn/upright-crop.ts'

const orders = (seed: number) => Array.from({ length: SET_SIZE }, (_, n) => setOrder(seed, n))
const planOf = ({ order }: ReturnType<typeof setOrder>): PlannedFigure => {
  if (typeof order.figure === 'string') throw new Error('The set plans its figures by their parts.')
  return order.figure
}

describe('the figures of the examination', () => {
  it.each([1, 2])(
    'are 1,200 that all mean something, even over letterings, kinds and levels, seed %i',
    (seed) => {
      const all = orders(seed)
      for (const figure of all) {
        const { unit } = planOf(figure)
        const once = standard(linear(planOf(figure)), unit)
        // The answer, read again, is itself.
        expect(standard(once, unit)).toBe(once)
        expect(parseFigure(once, { unit }).of).not.toBe('slope')
      }
      const count = (is: (figure: (typeof all)[number]) => boolean) => all.filter(is).length
      for (const name of LETTERINGS) expect(count((f) => f.order.lettering === name)).toBe(80)
      for (const kind of FIGURE_KINDS) expect(count((f) => f.kind === kind)).toBe(120)
      for (const level of LEVELS) expect(count((f) => f.order.level === level)).toBe(400)
      for (const name of LETTERINGS) {
        for (const kind of FIGURE_KINDS) {
          expect(count((f) => f.order.lettering === name && f.kind === kind)).toBe(8)
        }
      }
    },
  )

  it('are not the same by another seed, and the same by the same', async () => {
    const take = async (seed: number) => {
      const figures = []
      for await (const { grey, text } of figureSet(seed, 8))
        figures.push({ text, pixels: Buffer.from(grey.pixels).toString('base64') })
      return figures
    }
    const [first, again, other] = [await take(11), await take(11), await take(12)]
    expect(again).toEqual(first)
    expect(other.map(({ text }) => text)).not.toEqual(first.map(({ text }) => text))
  })

  it.each(LETTERINGS)(
    'of %s have ink of their own for every sign, within the room that is said',
    (lettering) => {
      const context = createCanvas(120, 120).getContext('2d')
      const pictures = new Set<string>()
      // Without I, which many hands draw as they draw a 1.
      const signs = '0123456789ADEGHLOPRSTY.,"°±+-Ø#/'
      for (const glyph of signs) {
        const d = dice(5)
        const set = setFigure(
          { lines: [[{ kind: 'text', text: glyph }]], unit: 'in' },
          faceOf(lettering, d),
          40,
          'stacked',
          d,
        )
        context.clearRect(0, 0, 120, 120)
        context.save()
        context.translate(40, 80)
        drawSetFigure(context, set)
        context.restore()
        const { data } = context.getImageData(0, 0, 120, 120)
        let [ink, outside] = [0, 0]
        // A pen wobbles by a few hundredths of a height beyond the room of its skeleton, and a pixel is spread over two.
        const slack = 0.12 * 40 + 1.5
        for (let i = 0; i < 120 * 120; i++) {
          const alpha = data[4 * i + 3] ?? 0
          const [x, y] = [(i % 120) + 0.5 - 40, Math.floor(i / 120) + 0.5 - 80]
          ink += alpha
          const beyond =
            x < set.left - slack || x > set.right + slack || y < set.top - slack || y > set.bottom + slack
          if (beyond) outside += alpha
        }
        expect(ink, glyph).toBeGreaterThan(255 * 4)
        expect(outside, glyph).toBe(0)
        pictures.add(Buffer.from(data.buffer).toString('base64'))
      }
      // No two signs look alike, as they would where a fount lacked them and drew one box for all.
      expect(pictures.size).toBe(signs.length)
    },
  )

  it.each([0, -90, 90, 33, -61])('stand in their true frame when they are turned by %i°', async (angle) => {
    for (const lettering of ['Work Sans', 'pen, slanted'] as const) {
      const drawn = await drawFigure({
        figure: '12 3/8"',
        lettering,
        height: 40,
        angle,
        layout: 'stacked',
        level: 'clean',
        seed: 4,
      })
      const level = await drawFigure({
        figure: '12 3/8"',
        lettering,
        height: 40,
        angle: 0,
        layout: 'stacked',
        level: 'clean',
        seed: 4,
      })
      const crops = [drawn, level].map(({ grey, frame }) => uprightCrop(grey, frame, 2, 1).pixels)
      expect(correlation(crops[0] ?? new Uint8Array(), crops[1] ?? new Uint8Array())).toBeGreaterThan(0.9)
      const [x, y, w, h] = drawn.frame.box
      expect(Math.min(x, y)).toBeGreaterThan(0.7 * 40)
      expect(x + w).toBeLessThan(drawn.grey.width - 0.7 * 40)
      expect(y + h).toBeLessThan(drawn.grey.height - 0.7 * 40)
    }
  })
})

/** Pearson's, of two pictures of one size. */
function correlation(a: Uint8Array, b: Uint8Array): number {
  const mean = (of: Uint8Array) => of.reduce((sum, v) => sum + v, 0) / of.length
  const [ma, mb] = [mean(a), mean(b)]
  let [ab, aa, bb] = [0, 0, 0]
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [p, q] = [(a[i] ?? 0) - ma, (b[i] ?? 0) - mb]
    ab += p * q
    aa += p * p
    bb += q * q
  }
  return ab / Math.sqrt(aa * bb)
}

describe('a drawn sheet', () => {
  it('has figures that mean something, upright and turned, apart from one another, on the sheet', async () => {
    const { grey, figures, words, ways } = await drawSheet(15)
    expect(figures.length).toBeGreaterThan(15)
    expect(words.length).toBeGreaterThan(10)
    expect(figures.some(({ frame }) => frame.angle === -90)).toBe(true)
    for (const { text, frame } of figures) {
      expect(standard(text, ways.unit)).toBe(text)
      const [x, y, w, h] = frame.box
      expect(Math.min(x, y)).toBeGreaterThan(0)
      expect(x + w).toBeLessThan(grey.width)
      expect(y + h).toBeLessThan(grey.height)
    }
    const boxes = figures.map(({ frame }) => frame.box)
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = a[0] + a[2] < b[0] || b[0] + b[2] < a[0] || a[1] + a[3] < b[1] || b[1] + b[3] < a[1]
        expect(apart).toBe(true)
      }
    })
  })
})
