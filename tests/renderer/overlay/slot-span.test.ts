import { expect, it } from 'vitest'
import { pixel } from '../../../src/core/geometry/frames.ts'
import type { MarkShape } from '../../../src/renderer/overlay/shape.ts'
import { spanOf } from '../../../src/renderer/overlay/span.ts'

const end = (x: number, y: number, radius: number): MarkShape => ({
  kind: 'circle',
  centre: pixel(x, y),
  radius,
})

it('shows the width of a slot across its middle, and its length from top to top', () => {
  // Along 3, 4: 100 px between the centres.
  const ends = [end(100, 100, 20), end(160, 180, 30)]
  const width = spanOf('slot-width', ends)
  const length = spanOf('slot-length', ends)
  if (width?.kind !== 'straight' || length?.kind !== 'straight') throw new Error('they are not straight')
  expect(width.from).toEqual([130 + 25 * 0.8, 140 - 25 * 0.6])
  expect(width.to).toEqual([130 - 25 * 0.8, 140 + 25 * 0.6])
  expect(length.from).toEqual([88, 84])
  expect(length.to).toEqual([178, 204])
  expect([width.offset, length.offset]).toEqual([false, true])
  expect(spanOf('slot-length', [end(1, 1, 5), end(1, 1, 5)])).toBeNull()
  expect(spanOf('slot-width', ends.slice(0, 1))).toBeNull()
})
