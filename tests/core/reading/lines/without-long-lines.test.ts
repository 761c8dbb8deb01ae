import { describe, expect, it } from 'vitest'
import { withoutLongLines } from '../../../../src/core/reading/lines/without-long-lines.ts'
import type { InkField } from '../../../../src/core/reading/network/glyph-network.ts'
import { inkOfSvg } from '../../imaging/drawn/svg-picture.ts'

const [WIDE, HIGH] = [200, 70]
/** Digits 22 pixels high as paths: a 4, a 7 and an 8; and three eighths stacked, with its bar. */
const DIGITS =
  '<path d="M52 24l-11 15h16M52 24v22M70 24h13l-8 22"/><circle cx="100" cy="29.5" r="5"/><circle cx="100" cy="40" r="6"/>'
const FRACTION =
  '<path d="M126 14h8l-5 5a4 4 0 1 1-4 6M120 33h22"/><circle cx="131" cy="41.5" r="3.5"/><circle cx="131" cy="49" r="4"/>'
const strokes = (paths: string): string => `<g fill="none" stroke="black" stroke-width="2.6">${paths}</g>`

const LIMITS = { least: 48, thickest: 6 }

async function fieldOf(paths: string): Promise<InkField> {
  const { width, height, data } = await inkOfSvg(strokes(paths), WIDE, HIGH, 0.6)
  return { width, height, ink: Float32Array.from(data) }
}

const sum = (values: Float32Array): number => values.reduce((all, v) => all + v, 0)

describe('long lines beside and through a figure', () => {
  it('leaves a figure without them as it is, its bar too', async () => {
    const field = await fieldOf(DIGITS + FRACTION)
    const cleaned = withoutLongLines(field, LIMITS)
    expect(cleaned.lines).toEqual([])
    expect(cleaned.field.ink).toEqual(field.ink)
  })

  it.each([
    ['level below', 'M0 60.3H200'],
    ['sloping below', 'M0 58L200 64'],
    ['level through', 'M0 35.6H200'],
    ['upright beside', 'M165 0V70'],
    ['at an odd angle beside', 'M155 70L190 0'],
    ['at an odd angle through', 'M40 70L180 5'],
    ['with a break', 'M0 61H80M84 61H200'],
  ])('takes out one %s, and no more of the strokes than it touches', async (_, line) => {
    const figure = await fieldOf(DIGITS + FRACTION)
    const both = await fieldOf(`${DIGITS}${FRACTION}<path d="${line}"/>`)
    const { field, lines } = withoutLongLines(both, LIMITS)
    expect(lines.length).toBeGreaterThan(0)
    let [lineLeft, lineWhole, gone] = [0, 0, 0]
    for (let i = 0; i < field.ink.length; i++) {
      const [is, was, drawn] = [field.ink[i] ?? 0, both.ink[i] ?? 0, figure.ink[i] ?? 0]
      if (drawn < 0.02) {
        lineWhole += was
        lineLeft += is
      } else gone += Math.max(0, drawn - is)
    }
    expect(lineLeft / lineWhole).toBeLessThan(0.25)
    expect(gone / sum(figure.ink)).toBeLessThan(0.06)
  })
})
