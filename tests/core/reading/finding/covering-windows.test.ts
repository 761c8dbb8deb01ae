import { describe, expect, it } from 'vitest'
import { coveringWindows } from '../../../../src/core/reading/finding/covering-windows.ts'
import type { Edges } from '../../../../src/core/reading/glyphs/edges.ts'
import { dice } from '../drawn/dice.ts'

const LIMITS = { room: 20, longest: 400 }
const area = ({ left, top, right, bottom }: Edges): number => (right - left) * (bottom - top)

describe('windows that cover boxes', () => {
  it.each([1, 2, 3])('hold each of them with its room, and look at less than the whole (%d)', (seed) => {
    const d = dice(seed, 5)
    const boxes = Array.from({ length: 120 }, (): Edges => {
      const [left, top] = [d.between(0, 3000), d.between(0, 2000)]
      return { left, top, right: left + d.between(5, 40), bottom: top + d.between(5, 40) }
    })
    const windows = coveringWindows(boxes, LIMITS)
    for (const box of boxes) {
      const held = windows.some(
        ({ left, top, right, bottom }) =>
          left <= box.left - 20 &&
          top <= box.top - 20 &&
          right >= box.right + 20 &&
          bottom >= box.bottom + 20,
      )
      expect(held).toBe(true)
    }
    // 120 boxes of 62 a side on average, each with its room, are 8 % of the whole; no window costs more than its boxes do.
    const alone = boxes.map(({ left, top, right, bottom }) => (right - left + 40) * (bottom - top + 40))
    const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0)
    expect(sum(windows.map(area))).toBeLessThanOrEqual(sum(alone))
    for (const { left, top, right, bottom } of windows)
      expect(Math.max(right - left, bottom - top)).toBeLessThanOrEqual(400 + 40)
  })

  it('are none of no boxes', () => {
    expect(coveringWindows([], LIMITS)).toEqual([])
  })
})
