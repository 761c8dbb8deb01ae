import { describe, expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { UnnamedMark } from '../../../src/core/job/from-picks/picked-mark.ts'
import { isSameMark } from '../../../src/renderer/strokes/same-mark.ts'

const line = (...pixels: [number, number][]): UnnamedMark => ({
  kind: 'line',
  how: 'hand',
  sigma: 1,
  pixels: pixels.map(([x, y]) => pixel(x, y)),
})

const circle = (x: number, y: number, r: number): UnnamedMark => ({
  kind: 'circle',
  how: 'hand',
  sigma: 1,
  pixels: [pixel(x + r, y), pixel(x, y + r), pixel(x - r, y)],
})

describe('two picks of one stroke', () => {
  it('are the same line wherever along it they were taken, and not the other edge of a wall', () => {
    expect(isSameMark(line([0, 0], [100, 0]), line([300, 0.4], [420, 0.2]))).toBe(true)
    expect(isSameMark(line([0, 0], [100, 0]), line([0, 4], [100, 4]))).toBe(false)
    expect(isSameMark(line([0, 0], [100, 0]), line([50, 0], [50, 90]))).toBe(false)
  })

  it('are the same circle, and not one about another centre or of another size', () => {
    expect(isSameMark(circle(50, 50, 30), circle(50.6, 49.8, 30.5))).toBe(true)
    expect(isSameMark(circle(50, 50, 30), circle(56, 50, 30))).toBe(false)
    expect(isSameMark(circle(50, 50, 30), circle(50, 50, 36))).toBe(false)
    expect(isSameMark(circle(50, 50, 30), line([0, 0], [9, 9]))).toBe(false)
  })
})
