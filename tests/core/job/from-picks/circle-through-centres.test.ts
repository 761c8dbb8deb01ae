import { describe, expect, it } from 'vitest'
import { pixel } from '../../../../src/core/geometry/frames.ts'
import { circleThroughCentres } from '../../../../src/core/job/from-picks/circle-through-centres.ts'
import type { UnnamedMark } from '../../../../src/core/job/from-picks/picked-mark.ts'

const rim = (x: number, y: number, radius: number, n: number, how: 'hand' | 'stroke'): UnnamedMark => ({
  kind: 'circle',
  how,
  sigma: 0.1,
  pixels: Array.from({ length: n }, (_, i) => {
    const at = (2 * Math.PI * i) / n
    return pixel(x + radius * Math.cos(at), y + radius * Math.sin(at))
  }),
})

/** Eight holes of a flange, centres 85 mm from the middle at 4 px a mm. */
const holes = (how: 'hand' | 'stroke'): UnnamedMark[] =>
  [0, 2, 5].map((k) => {
    const at = Math.PI * (k / 4 + 1 / 8)
    return rim(900 + 340 * Math.cos(at), 1020 + 340 * Math.sin(at), 28, 50, how)
  })

describe('a circle through the middles of holes', () => {
  it('has their centres for its places, each as sure as its rim makes it', () => {
    const circle = circleThroughCentres(holes('stroke'))
    if ('refused' in circle || circle.kind !== 'circle') throw new Error('It is none.')
    for (const [x, y] of circle.pixels) expect(Math.hypot(x - 900, y - 1020)).toBeCloseTo(340, 2)
    expect(circle.how).toBe('stroke')
    expect(circle.sigma).toBeCloseTo(0.1 * Math.sqrt(2 / 50), 3)
  })

  it('is by hand where a hole is, and none of two holes', () => {
    expect(circleThroughCentres([...holes('stroke'), ...holes('hand')])).toMatchObject({ how: 'hand' })
    expect(circleThroughCentres(holes('stroke').slice(1))).toMatchObject({
      refused: { code: 'mark.too-few-picks' },
    })
  })
})
