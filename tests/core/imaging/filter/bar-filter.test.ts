import { describe, expect, it } from 'vitest'
import { cumulate, fillBars, PER_PIXEL } from '../../../../src/core/imaging/filter/bar-filter.ts'

/** 60 px across, two columns a pixel, of these values by pixel; some without a pixel. */
function barsOf(value: (x: number) => number, width: number, missing: (x: number) => boolean = () => false) {
  const columns = 60 * PER_PIXEL
  const x = (c: number) => (c + 0.5) / PER_PIXEL
  const total = Float64Array.from({ length: columns }, (_, c) => (missing(x(c)) ? 0 : 3 * value(x(c))))
  const count = Uint16Array.from({ length: columns }, (_, c) => (missing(x(c)) ? 0 : 3))
  const sums = new Float64Array(columns + 1)
  const any = cumulate({ total, count }, 0, columns, sums)
  const out = new Float32Array(columns + 1)
  if (any) fillBars(sums, columns, width, out, 0, { first: 0, last: columns, step: 1 })
  return { any, at: (place: number) => out[place * PER_PIXEL] ?? Number.NaN, out }
}

const stroke = (x: number): number => (x > 28 && x < 32 ? 120 : 200)

describe('the bar filter', () => {
  it('has on a stroke of its width the whole contrast, with its sign', () => {
    expect(barsOf(stroke, 4).at(30)).toBeCloseTo(-80, 4)
    expect(barsOf((x) => 255 - stroke(x), 4).at(30)).toBeCloseTo(80, 4)
  })

  it('has more of it at the middle than beside it, and none beyond', () => {
    const { at } = barsOf(stroke, 4)
    expect(Math.abs(at(31))).toBeLessThan(80)
    expect(at(40)).toBe(0)
  })

  it('has none at a step, however high', () => {
    const { out } = barsOf((x) => (x < 30 ? 40 : 220), 4)
    expect(Math.max(...out.map(Math.abs))).toBeLessThan(1e-3)
  })

  it('goes by the nearer of two different grounds', () => {
    expect(barsOf((x) => (x < 28 ? 150 : stroke(x)), 4).at(30)).toBeCloseTo(-30, 4)
  })

  it('bridges places without a pixel by the last one before', () => {
    expect(barsOf(stroke, 4, (x) => x > 30 && x < 30.5).at(30)).toBeCloseTo(-80, 4)
    expect(barsOf(stroke, 4, () => true).any).toBe(false)
  })
})
