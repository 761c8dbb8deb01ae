import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { findLine, findPoint } from '../../../../src/core/imaging/index.ts'
import { lensVariance, thresholdVariance } from '../../../../src/core/imaging/result/edge-model.ts'

describe('what the lens adds to an edge', () => {
  it('is next to nothing on a wide stroke, and grows as the stroke comes down to the blur', () => {
    const of = (width: number) => Math.sqrt(lensVariance({ width, blur: 0.7 }))
    expect(of(12)).toBeLessThan(0.001)
    expect(of(6)).toBeLessThan(0.01)
    expect(of(3)).toBeGreaterThan(0.04)
    expect(of(2)).toBeGreaterThan(of(3))
  })

  it('is more where the blur is, and never so much that there would be no stroke', () => {
    const of = (blur: number) => Math.sqrt(lensVariance({ width: 3, blur }))
    expect(of(1)).toBeGreaterThan(2 * of(0.6))
    expect(Math.sqrt(lensVariance({ width: 1.5, blur: 3 }))).toBeLessThan(0.75 / 2)
  })
})

describe('what an unknown threshold adds to an edge', () => {
  it('is a quarter of a pixel, and more on a stroke as narrow as its edges are soft', () => {
    expect(Math.sqrt(thresholdVariance(6))).toBeGreaterThan(0.2)
    expect(Math.sqrt(thresholdVariance(6))).toBeLessThan(0.26)
    expect(thresholdVariance(1)).toBeGreaterThan(2 * thresholdVariance(6))
  })
})

describe('a level stroke of one bit without noise', () => {
  const SIDE = 140
  /** Black rows on white, so many from the seventieth on; or, across, columns. */
  const rows = (count: number, across = false) => ({
    left: 0,
    top: 0,
    width: SIDE,
    height: SIDE,
    data: Uint8Array.from({ length: SIDE * SIDE }, (_, i) => {
      const at = across ? i % SIDE : Math.floor(i / SIDE)
      return at >= 70 && at < 70 + count ? 0 : 255
    }),
  })

  it.each([2, 3, 4, 7])(
    '%i px wide is found where it is, as wide as it is, and its edges are no surer',
    (count) => {
      for (const across of [false, true]) {
        const place = (along: number, aside: number) => (across ? pixel(aside, along) : pixel(along, aside))
        const middle = 70 + count / 2
        const point = findPoint(rows(count, across), place(70, middle + 1.2))
        const line = findLine(rows(count, across), place(30, middle - 0.6), place(110, middle + 0.9))
        if (point.kind === 'none' || line.kind === 'none') throw new Error('No stroke was found.')
        expect(point.pixel[across ? 0 : 1]).toBeCloseTo(middle, 2)
        expect(line.ends[0][across ? 0 : 1]).toBeCloseTo(middle, 2)
        expect(Math.abs(line.shape.width - count)).toBeLessThan(0.25)
        const edge = findPoint(rows(count, across), place(70, middle), { reading: 'left' })
        if (edge.kind === 'none') throw new Error('No edge was found.')
        const off = Math.abs(Math.abs(edge.pixel[across ? 0 : 1] - middle) - count / 2)
        expect(off).toBeLessThan(0.2)
        expect(edge.across).toBeGreaterThan(0.25)
      }
    },
  )
})
