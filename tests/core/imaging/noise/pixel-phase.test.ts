import { expect, it } from 'vitest'
import { pixelPhaseVariance } from '../../../../src/core/imaging/noise/pixel-phase.ts'

/** How far off the first moment of pixels is that a level stroke covers from `from` to `to`, pixels. */
function momentOff(from: number, to: number): number {
  let ink = 0
  let moment = 0
  for (let row = Math.floor(from); row < to; row++) {
    const covered = Math.min(row + 1, to) - Math.max(row, from)
    ink += covered
    moment += covered * (row + 0.5)
  }
  return moment / ink - (from + to) / 2
}

it('is what pixels do to the first moment of a level stroke, as far as least squares follow that', () => {
  // Widths as far apart as the phases of both edges are independent of one another.
  let sum = 0
  let count = 0
  for (let width = 2; width < 3; width += 0.01)
    for (let phase = 0; phase < 1; phase += 0.01) {
      sum += (momentOff(10 + phase, 10 + phase + width) * width) ** 2
      count++
    }
  const stated = pixelPhaseVariance(2, 90, [0, 1]) * 2 ** 2
  expect(stated / (sum / count)).toBeCloseTo(0.75 ** 2, 2)
})

it('evens out along a stroke that leans', () => {
  const level = pixelPhaseVariance(2, 90, [0, 1])
  expect(pixelPhaseVariance(2, 90, [Math.sin(0.3), Math.cos(0.3)])).toBeLessThan(level / 100)
  expect(pixelPhaseVariance(2, 90, [1, 0])).toBeCloseTo(level, 12)
})
