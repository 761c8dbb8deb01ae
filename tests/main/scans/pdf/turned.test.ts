import { describe, expect, test } from 'vitest'
import type { Pixels } from '../../../../src/main/services/scans/pdf/pixels/pixels.ts'
import { turned } from '../../../../src/main/services/scans/pdf/pixels/turned.ts'

/** Three pixels across, two down; each its own value, of a colour each sample its own. */
const picture = (samples: 1 | 3): Pixels => ({
  width: 3,
  height: 2,
  samples,
  bits: 8,
  data: Uint8Array.from({ length: 6 * samples }, (_, i) => Math.floor(i / samples) + 50 * (i % samples)),
})

describe('a picture of a PDF', () => {
  test.each([
    [0, false, [0, 1, 2, 3, 4, 5]],
    [0, true, [2, 1, 0, 5, 4, 3]],
    [1, false, [3, 0, 4, 1, 5, 2]],
    [1, true, [0, 3, 1, 4, 2, 5]],
    [2, false, [5, 4, 3, 2, 1, 0]],
    [2, true, [3, 4, 5, 0, 1, 2]],
    [3, false, [2, 5, 1, 4, 0, 3]],
    [3, true, [5, 2, 4, 1, 3, 0]],
  ] as const)(
    'turned by %i quarters clockwise and then mirrored (%s) keeps every value',
    async (quarters, mirrored, order) => {
      const across = quarters % 2 === 1
      for (const samples of [1, 3] as const) {
        const { width, height, data } = await turned(picture(samples), { quarters, mirrored, across })
        expect([width, height]).toEqual(across ? [2, 3] : [3, 2])
        const expected = order.flatMap((value) => [0, 50, 100].slice(0, samples).map((more) => value + more))
        expect([...data]).toEqual(expected)
      }
    },
  )
})
