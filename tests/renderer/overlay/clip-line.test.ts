import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { screen } from '../../../src/core/geometry/frames.ts'
import { stretchesWithin } from '../../../src/renderer/overlay/clip-line.ts'

const BOX = { left: 0, top: 0, right: 100, bottom: 80 }

describe('the part of a long line that is in sight', () => {
  it('is the line itself where all of it is', () => {
    expect(stretchesWithin([screen(1, 1), screen(50, 1), screen(50, 60)], BOX)).toEqual([
      {
        points: [screen(1, 1), screen(50, 1), screen(50, 60)],
        start: 0,
      },
    ])
  })

  it('begins its dashes as far along as it is cut', () => {
    expect(stretchesWithin([screen(-300, 40), screen(400, 40)], BOX)).toEqual([
      {
        points: [screen(0, 40), screen(100, 40)],
        start: 300,
      },
    ])
  })

  it('is in two where the line leaves and comes back', () => {
    const stretches = stretchesWithin([screen(50, 40), screen(50, 200), screen(60, 200), screen(60, 40)], BOX)
    expect(stretches.map(({ start }) => start)).toEqual([0, 160 + 10 + 120])
  })

  it('is nothing of a line that passes by', () => {
    expect(stretchesWithin([screen(-10, 0), screen(-10, 80)], BOX)).toEqual([])
    expect(stretchesWithin([screen(-50, 40), screen(40, 200)], BOX)).toEqual([])
  })

  it('lies in the box and on the line, whatever the line', () => {
    const place = fc
      .tuple(fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: -500, max: 500, noNaN: true }))
      .map(([x, y]) => screen(x, y))
    fc.assert(
      fc.property(place, place, (a, b) => {
        const length = Math.hypot(b[0] - a[0], b[1] - a[1])
        for (const { points, start } of stretchesWithin([a, b], BOX)) {
          for (const [x, y] of points) {
            expect(x > -1e-6 && x < 100 + 1e-6 && y > -1e-6 && y < 80 + 1e-6).toBe(true)
            const off = Math.abs((x - a[0]) * (b[1] - a[1]) - (y - a[1]) * (b[0] - a[0]))
            expect(off).toBeLessThan(1e-6 * Math.max(1, length) ** 2)
          }
          const [first] = points
          if (first) expect(Math.abs(Math.hypot(first[0] - a[0], first[1] - a[1]) - start)).toBeLessThan(1e-6)
        }
      }),
    )
  })
})
